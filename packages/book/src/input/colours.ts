import { parseNumber } from '@lodebook/reckon/units'
import type { Colour } from '../values.ts'
import type { Read } from './read.ts'
import { says, wants } from './read.ts'

const example = 'colours by size such as 12 fine at 0.05 mg; 2 coarse at 1.5 mg, or none'

/**
 * Reads gold counted in a pan: `12 fine at 0.05 mg; 2 coarse at 1.5 mg`; `none` for a pan with no gold.
 * @param mgEach  what one grain of a class weighs, milligrams, for classes written without it
 */
export function readColours(text: string, mgEach: Readonly<Record<string, number>> = {}): Read<readonly Colour[]> {
  const written = text.trim()
  if (/^(none|nil|no|0)$/i.test(written)) return says([])
  const colours: Colour[] = []
  for (const part of written.split(/[;\n]|,\s+/)) {
    const m = /^(\d{1,6})\s+([a-z][a-z -]*?)(?:\s*(?:at|of|x|×|@)\s*([\d.,/ e+-]+?)\s*mg(?:\s+each)?)?$/i.exec(part.trim())
    if (m === null) return wants(example)
    const name = m[2]!.toLowerCase()
    const said = m[3] === undefined ? undefined : parseNumber(m[3])
    const each = said === undefined ? Object.hasOwn(mgEach, name) ? mgEach[name] : undefined : said.ok ? said.value : Number.NaN
    if (each === undefined) return wants(example, `because what one ${name} grain weighs is not said`)
    if (!(each > 0)) return wants(example, 'because a grain weighs more than nothing')
    colours.push({ class: name, count: Number(m[1]), mgEach: each })
  }
  return says(colours)
}

/** The text that readColours reads back. */
export const coloursText = (colours: readonly Colour[]): string =>
  colours.length === 0 ? 'none' : colours.map(({ class: name, count, mgEach }) => `${count} ${name} at ${mgEach} mg`).join('; ')
