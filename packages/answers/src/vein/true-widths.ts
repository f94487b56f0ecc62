import type { Entry } from '@lodebook/book'
import type { Degrees, Enu } from '@lodebook/reckon'
import { InputError } from '@lodebook/reckon'
import { axesOf, lineOf, trueWidth } from '@lodebook/reckon/structure'
import type { FittedVein, Line } from '@lodebook/reckon/structure'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import type { StationPlace } from '../places/place-in-space.ts'
import { placeOf, quantityOf, textOf, valueOf } from '../read.ts'
import type { North } from '../survey/north.ts'
import { length } from '../words.ts'
import type { CrewUnits } from '../words.ts'

export interface WidthContext {
  readonly plane: FittedVein
  readonly planeAnswers: readonly Answer[]
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly north: North
  readonly units: CrewUnits
}

/** How well a hand holds the tape along the line it means to: degrees. Common practice, no source. */
const tapeDirectionSigma: Degrees = 6
/** How well a vein's edge is seen and taped: metres. Common practice, no source. */
const tapeLengthSigma = 0.02

/** Which way a tape lay, from what was written; undefined when it lay in the vein and so measured no width. */
function tapeLine(entry: Entry, context: WidthContext): Line | undefined {
  const square = lineOf(axesOf(context.plane).normal)
  switch (textOf(entry, 'direction')) {
    case 'down the dip': return undefined
    case 'upright': return { trend: 0, plunge: 90 }
    case 'level across the heading': return { trend: acrossHeading(entry, context) ?? context.plane.dipDirection, plunge: 0 }
    case 'along a line': {
      const trend = valueOf(entry, 'trend')
      return trend === undefined ? square
        : { trend: context.north.toGrid(trend, textOf(entry, 'north') ?? 'magnetic', textOf(entry, 'taken')), plunge: valueOf(entry, 'plunge') ?? 0 }
    }
    default: return square
  }
}

/** Square across the heading at the place where it was taped. */
function acrossHeading(entry: Entry, { stations }: WidthContext): Degrees | undefined {
  const place = placeOf(entry)
  if (place?.by !== 'station') return undefined
  const a = stations.get(place.station)
  const b = stations.get(place.toward ?? a?.onward ?? '')
  if (!a || !b) return undefined
  const [e, n]: Enu = [b.point[0] - a.point[0], b.point[1] - a.point[1], 0]
  return (Math.atan2(e, n) * 180 / Math.PI + 450) % 360
}

/** The true width behind a taped one, as an answer; undefined when nothing was taped or the tape lay in the vein. */
export function trueWidthOf(entry: Entry, field: string, context: WidthContext): (Answer & { readonly sigma: number }) | undefined {
  const taped = valueOf(entry, field)
  const line = taped === undefined ? undefined : tapeLine(entry, context)
  if (taped === undefined || !line) return undefined
  const { plane } = context
  let found
  try {
    found = trueWidth(
      { ...line, length: taped, lengthSigma: tapeLengthSigma, directionSigma: tapeDirectionSigma },
      { strike: plane.strike, dip: plane.dip, ...(plane.doubt ? { normal: plane.doubt.normal } : {}) })
  } catch (error) {
    if (error instanceof InputError) return undefined
    throw error
  }
  if (found.alongVein) return undefined
  const how = textOf(entry, 'direction') ?? 'square to the vein'
  return {
    ...buildAnswer({
      id: `vein.width.${entry.id}`, value: found.width, unit: 'm',
      sentence: `True width ${length(found.width, context.units)} from ${quantityOf(entry, field)!.text} taped ${how}.`,
      range: { low: Math.max(0, found.width - 1.2816 * found.sigma), high: found.width + 1.2816 * found.sigma, confidence: 0.8, because: ['how the tape was held', 'the vein\'s attitude'] },
      method: { name: 'true width', page: 'true-width', working: [`${taped.toFixed(3)} m × |cos ${found.angle.toFixed(1)}°| = ${found.width.toFixed(3)} m`] },
      from: [entry.id], parts: context.planeAnswers,
    }),
    sigma: found.sigma,
  }
}
