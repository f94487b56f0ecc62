import type { Making } from '../making.ts'
import { timeOn } from '../write/clock.ts'
import { ives, veinName, wren } from '../write/crew.ts'

/** The workings by name with their stations, and the old stope by the stations sighted round it. */
export function headings({ ore, diary }: Making): void {
  ore.workings.forEach((working, i) => {
    diary.write(wren, timeOn('2026-05-15', 18, 4 * i), 'heading', {
      name: working.name, sort: working.sort, stations: working.stations.join(', '), vein: working.onVein || /raise|winze/.test(working.sort) ? veinName : undefined,
      drivenBy: working.sort === 'surface' ? 'us' : 'old workers',
      note: working.name === 'Winze' ? 'Water stands below the last station. Nobody goes down.' : undefined,
    })
  })
  diary.write(ives, timeOn('2026-05-15', 19), 'worked-out', {
    name: 'Old stope', vein: veinName, corners: ore.stopeCorners.join('; '), by: 'old workers', note: 'Stacked waste along the foot of it; edges sighted from the raises.',
  })
}
