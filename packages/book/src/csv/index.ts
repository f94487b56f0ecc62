// Files of columns coming in
export type { AlreadyThere, ColumnUse, CsvPreview, RowDraft } from './csv-preview.ts'
export { certificateDrafts } from './certificate-drafts.ts'
export { previewCsv } from './preview-csv.ts'
export type { ColumnMap, CsvOptions, CsvTarget, PlacePart } from './recipe.ts'

// And going out
export { quantityText, valueText } from './value-text.ts'
export { writeCsv } from './write-csv.ts'
