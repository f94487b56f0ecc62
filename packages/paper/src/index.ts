// Sheets
export { paperSizes, pointsPerMm } from './paper-size.ts'
export type { PaperName } from './paper-size.ts'

// Fonts
export { openFont } from './open-font.ts'

// Labels for bags
export { labelSheets, rulerMm } from './labels/label-sheets.ts'
export type { LabelsAsked } from './labels/label-sheets.ts'
export { codeSide, labelLayout } from './labels/label-layout.ts'
export type { LabelBox } from './labels/label-layout.ts'
