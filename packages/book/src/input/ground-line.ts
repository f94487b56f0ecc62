import { findUnit, parseQuantity } from '@lodebook/reckon/units'
import type { GroundLine } from '../values.ts'
import type { Read } from './read.ts'
import { says, wants } from './read.ts'

const example = 'points across as distance / height, such as 0/0; 3/1.5; 6/0.2 m'

/**
 * Reads a ground line taped across the work: `0/0; 3/1.5; 6/4'2"; 9/0 ft`, or `0 0, 3 1.5, 6 0.2 m`. A unit after the last figure holds for all
 * figures that have none; the distance across must rise.
 * @param unit  for figures without one when the last has none either; it is then written into the text
 */
export function readGroundLine(text: string, unit?: string): Read<GroundLine> {
  const written = text.trim().replace(/\s+/g, ' ')
  const pairs = written.split(/\s*[;,]\s*/).filter(part => part !== '').map(parts)
  if (pairs.length < 2) return wants(example, 'because a line has two points or more')
  const last = /\d\s*([a-z]+)$/i.exec(written)?.[1]
  const own = last !== undefined && findUnit(last, 'length') ? last : undefined
  const assumed = own ?? unit
  const bare = pairs.some(pair => pair?.some(piece => /^[+-]?[\d.]+$/.test(piece)))
  const line: [number, number][] = []
  for (const pair of pairs) {
    if (pair === undefined) return wants(example, 'because each point is two figures')
    const read = pair.map(piece => parseQuantity(piece, 'length', assumed === undefined ? {} : { defaultUnit: assumed }))
    const [across, up] = read
    if (!across?.ok) return wants(example, across && !across.ok ? across.problem.why : undefined)
    if (!up?.ok) return wants(example, up && !up.ok ? up.problem.why : undefined)
    const before = line.at(-1), x = across.quantity.value, z = up.quantity.value
    if (x === null || z === null) return wants(example)
    if (before && x <= before[0]) return wants(example, `because ${JSON.stringify(pair[0])} is not beyond the point before it`)
    line.push([x, z])
  }
  if (!bare || own !== undefined) return says({ text: written, line })
  // The unit is written behind the last figure, where it holds for all of them.
  return /[\d.]$/.test(written) ? says({ text: `${written} ${assumed!}`, line }) : wants(example, 'because some figures have a unit and some have none; write it after each')
}

/** The two figures of a point: parted by a stroke, or by a space when neither holds one. */
function parts(point: string): readonly [string, string] | undefined {
  const stroke = point.split('/').map(piece => piece.trim())
  if (stroke.length === 2 && stroke.every(piece => piece !== '')) return [stroke[0]!, stroke[1]!]
  const m = /^([+-]?[\d.]+ ?[a-z'"]*) +([+-]?[\d.]+ ?[a-z'"]*)$/i.exec(point)
  return m ? [m[1]!, m[2]!] : undefined
}
