/** Sheets that printers take, millimetres, upright. */
export const paperSizes = { A4: { wide: 210, high: 297 }, Letter: { wide: 215.9, high: 279.4 } } as const
export type PaperName = keyof typeof paperSizes

/** Points to a millimetre: 72 to the inch. */
export const pointsPerMm = 72 / 25.4
