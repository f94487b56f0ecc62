/** What laboratories print where they give no grade, and which reason that is. Common practice, no source. */
const reasons: readonly (readonly [RegExp, string])[] = [
  [/^(?:n\.?s\.?s\.?|i\.?\/?s\.?|i\.?n\.?s\.?|insuff(?:icient|\.)?(?: sample| pulp| material)?|not (?:enough|sufficient) sample|no sample left)$/i, 'not enough sample'],
  [/^(?:l\.?n\.?r\.?|s\.?n\.?r\.?|n\.?r\.?e?c\.?|listed,? not received|sample not received|not received|missing)$/i, 'not received'],
  [/^(?:lost|sample lost|lost in (?:fusion|transit|lab)|spilled)$/i, 'lost'],
]

/** Why a cell of an assay holds no grade; undefined when it may hold one. */
export const noResult = (cell: string): string | undefined => reasons.find(([pattern]) => pattern.test(cell.trim()))?.[1]
