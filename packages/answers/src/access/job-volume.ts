import type { Entry, GroundLine } from '@lodebook/book'
import { radians } from '@lodebook/reckon'
import type { Enu } from '@lodebook/reckon'
import { gullyFill, profileAreas, profileBetween, rampFill, sectionVolume, surfaceVolume } from '@lodebook/reckon/earthwork'
import type { GroundMaterial, Section } from '@lodebook/reckon/earthwork'
import type { Assume, AssumedFigure } from '../assumptions.ts'
import { isLocated, locate } from '../places/place-in-space.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { placeOf, textOf, valueOf } from '../read.ts'
import { area as areaWords, length as lengthWords, plural, volume as volumeWords } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { SectionDrawn } from './shapes.ts'

/** How much there is to move, m³: ground in place for a cut, packed fill for a ramp. `sigma` is relative. */
export interface JobVolume {
  readonly volume: number
  readonly fills: boolean
  readonly sigma: number
  readonly method: string
  readonly page: string
  readonly working: readonly string[]
  readonly sources: readonly string[]
  readonly from: readonly string[]
  readonly assumed: readonly AssumedFigure[]
  readonly sections: readonly SectionDrawn[]
  readonly cautions: readonly string[]
}

export interface JobGiven {
  readonly job: Entry
  readonly sections: readonly Entry[]
  readonly spots: readonly Entry[]
  readonly context: PlaceContext
  readonly material: GroundMaterial
  readonly assume: Assume
  readonly units: CrewUnits
}

/** The job's size from the best that was measured: spot heights, sections, its own dimensions, the eye; or why there is none. */
export function jobVolume(given: JobGiven): JobVolume | { readonly why: string } {
  const fills = ['ramp', 'wash-out'].includes(textOf(given.job, 'sort')!)
  return fromSpots(given, fills) ?? fromSections(given, fills) ?? fromSizes(given) ?? byEye(given, fills)
    ?? { why: 'no cross sections, spot heights or sizes are written for it yet' }
}

const base = { sources: [], assumed: [], cautions: [], sections: [] } as const

function fromSections({ job, sections, assume, units }: JobGiven, fills: boolean): JobVolume | undefined {
  const drawn = sections.flatMap((entry): SectionDrawn[] => {
    const [found, wanted] = [entry.fields['found'], entry.fields['wanted']] as (GroundLine | undefined)[], at = valueOf(entry, 'at') ?? 0
    const measured = { cut: valueOf(entry, 'cutArea') ?? 0, fill: valueOf(entry, 'fillArea') ?? 0 }
    if (found && wanted && Math.min(found.line.at(-1)![0], wanted.line.at(-1)![0]) > Math.max(found.line[0]![0], wanted.line[0]![0])) {
      return [{ entry: entry.id, at, found: found.line, wanted: wanted.line, ...profileAreas(found.line, wanted.line) }]
    }
    return measured.cut + measured.fill > 0 ? [{ entry: entry.id, at, found: [], wanted: [], ...measured }] : []
  }).sort((a, b) => a.at - b.at).filter((one, i, all) => i === 0 || one.at > all[i - 1]!.at)
  if (drawn.length < 2) return undefined
  const area = (one: { cut: number, fill: number }) => fills ? one.fill : one.cut
  const withMid = drawn.map((one, i): Section => {
    const next = drawn[i + 1]
    const lines = next && one.found.length > 1 && next.found.length > 1
    const mid = lines ? area(profileAreas(profileBetween(one.found, next.found), profileBetween(one.wanted, next.wanted)))
      : next ? (area(one) + area(next)) / 2 : undefined
    return { at: one.at, area: area(one), ...(mid === undefined ? {} : { midArea: mid }) }
  })
  const [ends, prismoidal] = [sectionVolume(withMid, 'average-end-area'), sectionVolume(withMid, 'prismoidal')]
  if (!(prismoidal > 0)) return undefined
  const doubt = assume('volume from sections')
  return {
    ...base, volume: prismoidal, fills, sigma: Math.hypot(doubt.value, (ends - prismoidal) / prismoidal / 2), method: `prismoidal rule over ${plural(drawn.length, 'taped section')}`, page: 'section-volume',
    working: [
      ...drawn.map(one => `at ${lengthWords(one.at, units)}: cut ${areaWords(one.cut, units)}, fill ${areaWords(one.fill, units)}`),
      `sum of L (A1 + 4 Am + A2) / 6 = ${volumeWords(prismoidal, units)}, Am from the lines half-way; by average end area ${volumeWords(ends, units)}`,
    ],
    sources: ['T. G. Hicks, Handbook of Civil Engineering Calculations: prismoidal and average end area'],
    from: [job.id, ...drawn.map(one => one.entry)], assumed: [doubt], sections: drawn,
  }
}

function fromSpots({ job, spots, context, assume, units }: JobGiven, fills: boolean): JobVolume | undefined {
  const at = spots.flatMap((entry) => {
    const place = placeOf(entry), found = locate(place, context), up = valueOf(entry, 'up')
    const known = up !== undefined || place?.by === 'station' || place?.by === 'tapes' || (place?.by === 'grid' && place.up !== undefined) || (place?.by === 'gps' && place.elevation !== undefined)
    return isLocated(found) && known ? [{ entry: entry.id, surface: textOf(entry, 'surface'), point: [found.point[0], found.point[1], up ?? found.point[2]] as Enu }] : []
  })
  const [found, wanted] = ['as found', 'as wanted'].map(surface => at.filter(one => one.surface === surface))
  if (found!.length < 3 || wanted!.length < 3) return undefined
  try {
    const { cut, fill, area } = surfaceVolume(found!.map(s => s.point), wanted!.map(s => s.point)), doubt = assume('volume from sections')
    const volume = fills ? fill : cut
    return !(volume > 0) ? undefined : {
      ...base, volume, fills, sigma: doubt.value, method: `two surfaces of ${found!.length} and ${wanted!.length} spot heights, each joined by Delaunay's triangles`, page: 'surface-volume',
      working: [`over ${areaWords(area, units)} where both are known: cut ${volumeWords(cut, units)}, fill ${volumeWords(fill, units)}`],
      from: [job.id, ...at.map(one => one.entry)], assumed: [doubt],
    }
  } catch { return undefined } // spots in one line make no surface
}

function fromSizes({ job, material, assume, units }: JobGiven): JobVolume | undefined {
  const of = (field: string) => valueOf(job, field)
  const doubt = assume('volume from sections'), [width, grade] = [of('width'), of('grade')]
  if (textOf(job, 'sort') === 'ramp') {
    const [rise, ground = 0] = [of('rise'), of('groundGrade')]
    if (rise === undefined || width === undefined || grade === undefined || !(grade > 0 && grade < 45 && ground >= 0 && ground < grade)) return undefined
    const ramp = rampFill(rise, width, Math.tan(radians(grade)), { ground: Math.tan(radians(ground)), sidesDeg: material.repose, crown: of('crown') ?? 0 })
    return {
      ...base, volume: ramp.fill, fills: true, sigma: doubt.value, method: 'fill wedge of an even ramp against the slope', page: 'ramp', from: [job.id], assumed: [doubt],
      working: [
        `long ${lengthWords(ramp.length, units)}, foot reaching ${lengthWords(ramp.reach, units, 2)} to each side at ${material.repose}°`,
        `L (w d/2 + d²/(3 tan sides)) + crown ${volumeWords(ramp.crown, units, 2)} = ${volumeWords(ramp.fill, units)}`,
      ],
    }
  }
  const [length, depth] = [of('length'), of('depth')], shape = textOf(job, 'shape') as 'V' | 'round' | 'flat' | undefined ?? 'round'
  if (textOf(job, 'sort') !== 'wash-out' || length === undefined || width === undefined || depth === undefined) return undefined
  const fill = gullyFill(length, width, depth, shape)
  return {
    ...base, volume: fill, fills: true, sigma: Math.max(doubt.value, 0.2), method: `gully of ${shape} section`, page: 'ramp', from: [job.id], assumed: [doubt],
    working: [`${[length, width, depth].map(one => lengthWords(one, units)).join(' × ')} × ${{ V: '1/2', round: '2/3', flat: '1' }[shape]} = ${volumeWords(fill, units)}`],
  }
}

function byEye({ job, assume }: JobGiven, fills: boolean): JobVolume | undefined {
  const volume = valueOf(job, 'bank'), doubt = assume('volume by eye')
  return volume === undefined ? undefined : { ...base, volume, fills, sigma: doubt.value, method: 'judged by eye', page: 'muck', working: [], from: [job.id], assumed: [doubt] }
}
