import type { Kind } from '../kinds/index.ts'
import type { Fields, FieldValue } from '../values.ts'
import type { Problem } from './problem.ts'
import { refuse } from './problem.ts'
import { momentMs } from './times.ts'

/**
 * Refuses a time due out that has passed already while nobody is written as out: the call-out clock would ring at once, or the day is wrong.
 * A going in that is written down afterwards says when they came out, and passes.
 */
export function lateAlready(kind: Kind, set: Readonly<Record<string, FieldValue | null | undefined>>, after: Fields, now: number): readonly Problem[] {
  const { due } = set
  if (kind.id !== 'going-in' || typeof due !== 'string' || after['out'] !== undefined) return []
  const [at, began] = [momentMs(due), momentMs(after['in'] as string ?? '')]
  // A time due before they went in is another mistake, with words of its own.
  return at === undefined || at > now || (began !== undefined && at <= began) ? [] : [refuse('due', kind.fields['due']!.label, due, 'a time still to come, or the time they came out as well', 'because that time has passed already')]
}
