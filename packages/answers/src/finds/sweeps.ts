import type { Entry } from '@lodebook/book'
import type { PlaceContext } from '../places/place-in-space.ts'
import { placeOf, textOf, wordsOf } from '../read.ts'
import type { CrewUnits } from '../words.ts'
import { placeText } from './place-text.ts'
import type { SweptAt } from './shapes.ts'
import { stretchBetween } from './stretch.ts'
import type { Legs } from './ways.ts'

const list = (words: readonly string[]): string => words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`

/** Every sweep with its line in the mine: what was heard along which sides, by whom and with what. */
export function sweptAt(sweeps: readonly Entry[], legs: Legs, context: PlaceContext, units: CrewUnits): readonly SweptAt[] {
  return sweeps.map((sweep): SweptAt => {
    const [from, to, sides] = [placeOf(sweep, 'from'), placeOf(sweep, 'to'), wordsOf(sweep, 'sides')]
    const stretch = stretchBetween(from, to, legs, context)
    return {
      entry: sweep.id, result: textOf(sweep, 'result') as SweptAt['result'], marks: wordsOf(sweep, 'marks'),
      says: `${short(placeText(from, units))} to ${short(placeText(to, units))}, ${list(sides)}`,
      length: stretch?.length, pieces: stretch?.pieces ?? [],
      lines: stretch ? sides.filter(side => side !== 'face').map(side => ({ side, points: stretch.along(side) })) : [],
      with: [textOf(sweep, 'instrument'), textOf(sweep, 'coil') && `${textOf(sweep, 'coil')!} coil`, textOf(sweep, 'setting')].filter(Boolean).join(', '),
      by: textOf(sweep, 'by') ?? sweep.createdBy, when: textOf(sweep, 'swept') ?? sweep.createdAt,
    }
  })
}

const short = (place: string): string => place.replace(/^at /, '')
