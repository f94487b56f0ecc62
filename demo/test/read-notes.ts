import type { FieldValue } from '@lodebook/book'
import type { Quantity } from '@lodebook/reckon/units'
import type { Demo } from '../src/index.ts'

export interface Read { readonly id: string, readonly fields: Readonly<Record<string, FieldValue>> }

/** The entries of a kind as they stand at the end, without those struck through: a plain second way to the fold's result, and a fast one. */
export function entriesOf(demo: Demo, kind: string): readonly Read[] {
  const entries = new Map<string, Record<string, FieldValue>>()
  for (const { draft } of [...demo.notes].sort((a, b) => a.at - b.at)) {
    if (draft.kind !== kind) continue
    if (draft.struck === true) { entries.delete(draft.entry); continue }
    entries.set(draft.entry, { ...entries.get(draft.entry), ...draft.set as Record<string, FieldValue> })
  }
  return [...entries].map(([id, fields]) => ({ id, fields }))
}

export const valueOf = (entry: Read, field: string): number | undefined => (entry.fields[field] as Quantity | undefined)?.value ?? undefined
export const textOf = (entry: Read, field: string): string | undefined => entry.fields[field] as string | undefined

export const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length
export const deviation = (values: readonly number[]): number => { const m = mean(values); return Math.sqrt(mean(values.map(v => (v - m) ** 2))) }
/** Turns an angle to (-180, 180]. */
export const signed = (angle: number): number => angle - 360 * Math.round(angle / 360)
