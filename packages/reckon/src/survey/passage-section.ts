import { InputError } from '../core/index.ts'

/** A point of a cross section: to the right and up from the station, as seen looking along the opening. Any one unit of length. */
export interface SectionPoint { readonly right: number, readonly up: number }

export interface PassageSection {
  /** Round the opening, counter-clockwise from the right, closed by its first point. */
  readonly outline: readonly SectionPoint[]
  readonly area: number
  /** One standard deviation of the area that all sections of a mine share, because nobody taped the corners. */
  readonly shapeSigma: number
  /** One standard deviation of the area from reading the tapes; each section's own. */
  readonly readingSigma: number
}

/** Between an ellipse and a box of the same four offsets: a hand-driven opening with an arched back. */
const exponent = 3
const stepsAQuarter = 6
/** An opening is as likely to be near an ellipse (0.785 of its box) as near the box itself; one standard deviation of that even spread. */
const shapeSpread = (1 - Math.PI / 4) / Math.sqrt(12)

/**
 * The shape of an opening at a station from the four offsets taped there and from sights to its walls.
 *
 * With offsets alone the corners are rounded by a superellipse; each sight to the wall replaces the guess where it hit.
 * @param offsets  to the left rib, right rib, back and sill, >= 0
 * @param hits  where sights met the rock, in the plane of the section
 * @param sigma  one standard deviation of one offset
 * @throws InputError for an offset below zero or a sigma that is not
 * Source: area of a superellipse by the shoelace sum over its outline; the spread between ellipse and box is our own, no source.
 */
export function passageSection(
  offsets: { readonly left: number, readonly right: number, readonly up: number, readonly down: number }, hits: readonly SectionPoint[] = [], sigma = 0.05,
): PassageSection {
  for (const [name, value] of Object.entries(offsets)) if (!(value >= 0)) throw new InputError(`offsets.${name}`, value, 'zero or more')
  if (!(sigma >= 0)) throw new InputError('sigma', sigma, 'zero or more')
  const { left, right, up, down } = offsets
  const guess = Array.from({ length: 4 * stepsAQuarter }, (_, i): SectionPoint => {
    const angle = i / (4 * stepsAQuarter) * 2 * Math.PI, c = Math.cos(angle), s = Math.sin(angle)
    const round = (x: number) => Math.sign(x) * Math.abs(x) ** (2 / exponent)
    return { right: round(c) * (c >= 0 ? right : left), up: round(s) * (s >= 0 ? up : down) }
  })
  const seen = hits.filter(hit => Math.hypot(hit.right, hit.up) > 1e-9 * (left + right + up + down + 1))
  // A hit stands for the wall half-way to the next; guessed points nearer to it than a step and a half give way.
  const span = 1.5 * Math.PI / (2 * stepsAQuarter), kept = guess.filter(p => seen.every(hit => Math.abs(turn(angleOf(p), angleOf(hit))) > span))
  const outline = [...kept, ...seen].sort((a, b) => angleOf(a) - angleOf(b))
  const area = shoelace(outline), box = (left + right) * (up + down)
  return {
    outline, area, shapeSigma: shapeSpread * box * kept.length / guess.length,
    readingSigma: sigma * Math.hypot(up + down, up + down, left + right, left + right) * area / Math.max(box, Number.MIN_VALUE),
  }
}

const angleOf = ({ right, up }: SectionPoint): number => { const a = Math.atan2(up, right); return a < 0 ? a + 2 * Math.PI : a }
const turn = (a: number, b: number): number => Math.atan2(Math.sin(a - b), Math.cos(a - b))

/** Area inside a closed outline, counter-clockwise positive. */
export function shoelace(outline: readonly SectionPoint[]): number {
  return outline.reduce((sum, p, i) => {
    const q = outline[(i + 1) % outline.length]!
    return sum + (p.right * q.up - q.right * p.up) / 2
  }, 0)
}

/** A cross section at a distance along an opening. */
export interface SectionAlong { readonly at: number, readonly section: PassageSection, readonly taped: boolean }

export interface PassageVolume { readonly volume: number, readonly sigma: number }

/** Where no offsets were taped at a station its section is borrowed: a third of its area in doubt. Common practice, no source. */
const borrowed = 1 / 3

/**
 * What an opening holds between its first and last station, by average end areas.
 * @param sections  in order along it
 * @returns volume with one standard deviation: the shape's doubt is shared by all sections, readings err each by itself
 * Source: average-end-area rule, Mahun, Open Access Surveying (see section-volume); error by propagation.
 */
export function passageVolume(sections: readonly SectionAlong[]): PassageVolume {
  let volume = 0, shape = 0, reading = 0
  sections.forEach((here, i) => {
    const before = sections[i - 1], after = sections[i + 1]
    const share = ((after ? after.at - here.at : 0) + (before ? here.at - before.at : 0)) / 2
    volume += here.section.area * share
    shape += here.section.shapeSigma * share
    reading += ((here.section.readingSigma ** 2 + (here.taped ? 0 : (borrowed * here.section.area) ** 2)) * share * share)
  })
  return { volume, sigma: Math.hypot(shape, Math.sqrt(reading)) }
}
