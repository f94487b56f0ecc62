import { smoothAlong } from '@lodebook/reckon/structure'
import type { SmoothWidth } from '@lodebook/reckon/structure'
import { buildAnswer } from '../../build-answer.ts'
import type { VeinAt } from '../../shapes.ts'
import { length } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import type { Stretch, Thickness } from '../shapes.ts'
import { between } from './on-stations.ts'

const tenth = 1.2816
const most = 4 // stretches told

/** How thick the vein is along itself, and where it swells and pinches by more than the widths' own scatter. */
export function thicknessOf({ width, widths, stations }: VeinAt, units: CrewUnits): Thickness {
  if (widths.length === 0) return { answer: width, along: [], swells: undefined, stretches: [] }
  const smooth = smoothAlong(widths.map(w => ({ at: w.at.along, width: w.width, sigma: w.sigma })))
  const stretches = stretchesOf(smooth, stations)
  const parts = widths.map(w => w.answer)
  const told = stretches.length === 0
    ? `The widths do not show where it swells or pinches: single ones stand ±${length(smooth.scatter, units, 2)} from the mean wherever they are.`
    : `It ${stretches.slice(0, most).map(s => `${s.is} to ${length(s.width, units, 2)} ${s.between}`).join('; it ')}.`
  return {
    answer: width, stretches,
    along: smooth.points.map(({ at, mean, sigma }) => ({ at, mean, low: Math.max(0, mean - tenth * sigma), high: mean + tenth * sigma })),
    swells: buildAnswer({
      id: 'vein.swells', value: stretches.length === 0 ? 'even' : `${stretches.length} stretches`, sentence: told,
      method: {
        name: 'running mean of true widths along the vein', page: 'vein-width-along',
        working: [
          smooth.reach === Infinity ? 'no running mean foretells a width left out better than the plain mean' : `each width counts by a bell of ${smooth.reach.toFixed(1)} m about the place: the reach that best foretells widths left out`,
          `mean ${smooth.overall.toFixed(2)} m; single widths stand ±${smooth.scatter.toFixed(2)} m from the running mean`,
          'a swell or a pinch is told where the mean\'s 80 % range leaves out the mean of all',
        ],
      },
      sources: ['Kernel regression: Nadaraya 1964, Watson 1964 (from memory)'], parts,
    }),
  }
}

/** Stretches where the 80 % range of the running mean leaves out the mean of all, the furthest from it first. */
function stretchesOf({ points, overall, reach }: SmoothWidth, stations: VeinAt['stations']): readonly Stretch[] {
  if (reach === Infinity) return []
  const side = points.map(({ mean, sigma }) => mean - tenth * sigma > overall ? 1 : mean + tenth * sigma < overall ? -1 : 0)
  const found: Stretch[] = []
  for (let i = 0; i < points.length; i++) {
    if (side[i] === 0) continue
    let end = i
    while (side[end + 1] === side[i]) end++
    const means = points.slice(i, end + 1).map(p => p.mean)
    const [from, to] = [points[i]!.at, points[end]!.at]
    found.push({ is: side[i] === 1 ? 'swells' : 'pinches', from, to, width: side[i] === 1 ? Math.max(...means) : Math.min(...means), between: between(stations, from, to) })
    i = end
  }
  return found.sort((a, b) => Math.abs(b.width - overall) - Math.abs(a.width - overall))
}
