import type { Entry, FieldValue, Kind } from '@lodebook/book'
import type { FieldReading } from './reading.ts'

/**
 * What a posting has to set: for a new entry all that was filled in; for one that is mended only what is different now, with null for a field
 * that was emptied.
 */
export function changes(kind: Kind, readings: Readonly<Record<string, FieldReading>>, mend: Entry | undefined): Record<string, FieldValue | null> {
  const set: Record<string, FieldValue | null> = {}
  for (const name of Object.keys(kind.fields)) {
    const now = readings[name]?.value, before = mend?.fields[name]
    if (now === undefined) { if (before !== undefined) set[name] = null } else if (!alike(now, before)) set[name] = now
  }
  return set
}

/** The same value: a quantity or an amount written out with the unit or currency that was taken for it before is no change. */
function alike(now: FieldValue, before: FieldValue | undefined): boolean {
  if (before === undefined) return false
  return JSON.stringify(bare(now)) === JSON.stringify(bare(before))
}

function bare(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(bare)
  if (typeof value !== 'object' || value === null) return value
  const { text, from, ...rest } = value as Record<string, unknown>
  if ('amount' in rest) return rest
  const kept = typeof rest['unit'] === 'string' ? [typeof from === 'string' ? `${String(text)} ${from}` : text] : [text, from]
  return [kept, ...Object.keys(rest).sort().map(key => [key, bare(rest[key])])]
}
