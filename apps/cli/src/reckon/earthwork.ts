import { muck, sectionVolume } from '@lodebook/reckon/earthwork'
import { z } from 'zod'
import { reckoning, type Reckoning } from './define.ts'

const section = z.strictObject({ at: z.number(), area: z.number(), mid_area: z.number().optional() })

export const earthwork: readonly Reckoning[] = [
  reckoning('section-volume', 'volume between cross sections',
    z.strictObject({ sections: z.array(section).max(10_000), rule: z.enum(['average-end-area', 'prismoidal']) }),
    { sections: [{ at: 0, area: 1504, mid_area: 1860 }, { at: 100, area: 2240 }], rule: 'prismoidal' },
    ({ sections, rule }) => ({
      volume: sectionVolume(sections.map(({ at, area, mid_area }) => ({ at, area, ...mid_area === undefined ? {} : { midArea: mid_area } })), rule),
    })),
  reckoning('muck', 'broken volume and loads from ground in place',
    z.strictObject({ bank_volume: z.number(), swell_pct: z.number(), load_volume: z.number() }),
    { bank_volume: 4, swell_pct: 71, load_volume: 0.06 },
    ({ bank_volume, swell_pct, load_volume }) => {
      const { looseVolume, loads, voids, loadFactor } = muck(bank_volume, swell_pct, load_volume)
      return { loose_volume: looseVolume, loads, whole_loads: Math.ceil(loads), voids_pct: voids * 100, load_factor: loadFactor }
    }),
]
