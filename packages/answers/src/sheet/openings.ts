import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { passageVolume } from '@lodebook/reckon/survey'
import type { Answer, AnswerOr, NotEnough } from '../answer.ts'
import type { AssumedFigure } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import type { StationPlace } from '../places/located.ts'
import type { HeadingShape, VeinAt, Workings } from '../shapes.ts'
import { plural, volume as volumeText } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { crossSectionAt } from './cross-section.ts'
import type { CrossSection, WallHit } from './cross-section.ts'

/** How much room there is: each heading and each worked-out piece of ground by its volume, and the cross section at every station of a heading. */
export interface Openings {
  readonly sentence: string
  /** m³, each with its range and what makes it as wide as it is. */
  readonly headings: readonly Answer[]
  readonly stopes: readonly AnswerOr[]
  readonly sections: readonly CrossSection[]
  readonly cautions: readonly string[]
}

export interface OpeningsInput {
  readonly workings: Workings
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly hits: readonly WallHit[]
  readonly vein: VeinAt | undefined
  readonly widths: readonly Entry[]
  readonly minimumWidth: AssumedFigure
  readonly units: CrewUnits
}

interface HeadingVolume { readonly answer: Answer, readonly sections: readonly CrossSection[] }

const z80 = 1.2816 // an 80 % range of a normal reaches so many standard deviations to either side
const range = (value: number, sigma: number, because: readonly string[]) =>
  ({ low: Math.max(0, value - z80 * sigma), high: value + z80 * sigma, confidence: 0.8, because })

/** Volumes of headings by average end areas of their cross sections, and of stopes by their outline and the width of the vein there. */
export function openingsOf(input: OpeningsInput): Openings | NotEnough {
  const { workings, units } = input
  if (workings.headings.length === 0 && workings.workedOut.length === 0) {
    return { notEnough: true, sentence: 'No heading has been named yet, so there is nothing to take a volume of.', cautions: [],
      wanted: [{ kind: 'heading', why: 'a heading names its stations in order' }, { kind: 'worked-out', why: 'the outline of a stope gives what was taken out' }] }
  }
  const drawn = workings.headings.filter(heading => heading.sort !== 'surface').map(heading => headingVolume(heading, input))
  const stopes = workings.workedOut.map(outline => stopeVolume(outline, input)), total = drawn.reduce((sum, one) => sum + one.answer.value, 0)
  return {
    sentence: `${plural(drawn.length, 'heading')} ${drawn.length === 1 ? 'holds' : 'hold'} about ${volumeText(total, units)} between ${drawn.length === 1 ? 'its' : 'their'} stations.`,
    headings: drawn.map(one => one.answer), stopes, sections: drawn.flatMap(one => one.sections),
    cautions: ['Volumes are of the openings as they stand, between their first and last stations: rock that fell in and muck on the sill are not told apart.'],
  }
}

function headingVolume(heading: HeadingShape, { stations, hits, units }: OpeningsInput): HeadingVolume {
  const places = heading.stations.map(name => stations.get(name)!), points = places.map(place => place.point)
  const sections = heading.stations.map((name, i) => crossSectionAt(name, places[i]!, heading.courses[i]!, hits))
  let at = 0
  const along = sections.map((section, i) => {
    if (i > 0) at += apart(points[i - 1]!, points[i]!)
    return { at, section, taped: section.taped }
  })
  const { volume, sigma } = passageVolume(along)
  const seen = sections.reduce((sum, section) => sum + section.hits, 0), bare = sections.filter(section => !section.taped).length
  return {
    sections,
    answer: buildAnswer({
      id: `openings.${heading.name}`, value: volume, unit: 'm³', sentence: `${heading.name} holds ${volumeText(volume, units)} over ${plural(sections.length, 'station')}.`,
      range: range(volume, sigma, [
        ...bare > 0 ? [`${plural(bare, 'station')} without offsets borrow a neighbour’s`] : [], 'the corners between the four offsets were not taped', ...seen > 0 ? [] : ['no sights to the walls'],
      ]),
      method: { name: 'average end areas', page: 'openings', working: sections.map(says) },
      from: [heading.entry, ...sections.flatMap(section => section.from)],
    }),
  }
}

const says = ({ station, area, hits, taped }: CrossSection): string =>
  `${station}: ${area.toFixed(2)} m²${hits > 0 ? `, ${plural(hits, 'sight')} to the wall` : ''}${taped ? '' : ', offsets borrowed'}`

const apart = (a: Enu, b: Enu): number => Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])

function stopeVolume({ entry, name, corners }: Workings['workedOut'][number], { vein, widths, minimumWidth, units }: OpeningsInput): AnswerOr {
  const measured = vein?.widths ?? []
  if (corners.length < 3) {
    return { notEnough: true, sentence: `${name}: too few of its corners have a place.`, wanted: [{ kind: 'shot', why: 'survey the stations that its corners are taped from' }], cautions: [] }
  }
  const area = areaOf(corners), mean = measured.length === 0 ? minimumWidth.value : measured.reduce((sum, one) => sum + one.width, 0) / measured.length
  const spread = measured.length < 2 ? minimumWidth.value / 4
    : Math.sqrt(measured.reduce((sum, one) => sum + (one.width - mean) ** 2, 0) / (measured.length - 1))
  // A slot is at least as wide as a person needs; how much wider than the vein the old workers broke is not known.
  const width = Math.max(mean, minimumWidth.value), value = area * width, share = Math.hypot(spread / width / 2, 0.15, 0.1)
  const known = new Set(widths.map(one => one.id))
  return buildAnswer({
    id: `openings.${name}`, value, unit: 'm³', sentence: `${name} held about ${volumeText(value, units)} before it was taken out.`,
    range: range(value, share * value, ['how wide the old workers broke', 'the edge is sighted, not walked']),
    method: { name: 'outline times width', page: 'openings', working: [`${area.toFixed(1)} m² in the plane of its corners × ${width.toFixed(2)} m`] },
    from: [entry, ...measured.map(one => one.entry).filter(id => known.has(id))], assumed: mean < minimumWidth.value ? [minimumWidth] : [],
  })
}

/** Area of a closed outline in space: half the length of the sum of cross products (Newell's rule, from memory). */
function areaOf(corners: readonly Enu[]): number {
  let x = 0, y = 0, z = 0
  const o = corners[0]!
  corners.forEach((p, i) => {
    const q = corners[(i + 1) % corners.length]!, a = [p[0] - o[0], p[1] - o[1], p[2] - o[2]] as const, b = [q[0] - o[0], q[1] - o[1], q[2] - o[2]] as const
    x += a[1] * b[2] - a[2] * b[1]
    y += a[2] * b[0] - a[0] * b[2]
    z += a[0] * b[1] - a[1] * b[0]
  })
  return Math.hypot(x, y, z) / 2
}
