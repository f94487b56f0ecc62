import { finite, InputError } from '../core/index.ts'

/** One cross section. Lengths and areas in one system: metres and square metres give cubic metres, feet and square feet cubic feet. */
export interface Section {
  /** Distance along the line. */
  readonly at: number
  readonly area: number
  /** Area measured half-way to the next section; only the prismoidal rule uses it. */
  readonly midArea?: number
}
export type VolumeRule = 'average-end-area' | 'prismoidal'

/**
 * Volume between cross sections.
 *
 * Average end area: sum of L (A1 + A2) / 2; too large where the shape tapers, by half for a pyramid. Prismoidal: sum of
 * L (A1 + 4 Am + A2) / 6, exact for prismoids and pyramids; it needs the area half-way, which is not the mean of the two.
 * @param sections  two or more, `at` rising; not modified
 * @throws InputError for fewer than two, `at` that does not rise, a negative area, or a missing half-way area
 * Source: T. G. Hicks, Handbook of Civil Engineering Calculations (prismoid of 1504, 1860, 2240 sq ft over 100 ft: 6904 cu yd).
 */
export function sectionVolume(sections: readonly Section[], rule: VolumeRule): number {
  if (sections.length < 2) throw new InputError('sections', sections, 'two or more cross sections')
  for (const [i, { at, area, midArea }] of sections.entries()) {
    finite(at, `sections[${i}].at`)
    const before = sections[i - 1]
    if (before && at <= before.at) throw new InputError(`sections[${i}].at`, at, `a distance beyond the section before it, ${before.at}`)
    for (const [field, value] of [['area', area], ['mid_area', midArea]] as const) {
      if (value !== undefined && finite(value, `sections[${i}].${field}`) < 0) throw new InputError(`sections[${i}].${field}`, value, 'an area of zero or more')
    }
  }
  return sections.slice(1).reduce((volume, next, i) => {
    const own = sections[i] ?? next
    const length = next.at - own.at
    if (rule === 'average-end-area') return volume + length * (own.area + next.area) / 2
    if (own.midArea === undefined) throw new InputError(`sections[${i}].mid_area`, own.midArea, 'the area measured half-way to the next section')
    return volume + length * (own.area + 4 * own.midArea + next.area) / 6
  }, 0)
}
