import { join } from 'node:path'
import { crossValidate, experimentalVariogram, krige, simulate } from '@lodebook/reckon/geostatistics'
import type { Kriged, KrigeOptions, Point2, Sample, VariogramModel } from '@lodebook/reckon/geostatistics'
import { readColumns, syntheticModel } from './bench-data.ts'

export interface Job {
  readonly name: string
  /** Names of the same job in speed_gstat.R and speed_scipy.py. */
  readonly gstat: string
  readonly scipy?: string
  readonly gstatRepeats?: number
  readonly wanted: string
  readonly run: () => void
  /** The same for half of the targets, for one of two threads; only where targets can be shared out. */
  readonly half?: (which: 0 | 1) => void
  /** Means of the last result, by the names that speed_gstat.R gives its own. */
  readonly check: () => Record<string, number>
}

function mean(values: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += values[i]!
  return sum / values.length
}

/** The jobs of the speed table. */
export function geostatisticsJobs(data: string): Job[] {
  const table = (file: string) => readColumns(join(data, file))
  const samples = (file: string, value: string, map: (value: number) => number = v => v): Sample[] => {
    const column = table(file)
    const [xs, ys, vs] = [column('x'), column('y'), column(value)]
    return xs.map((x, i): Sample => [x, ys[i]!, map(vs[i]!)])
  }
  const places = (file: string): Point2[] => {
    const column = table(file)
    const ys = column('y')
    return column('x').map((x, i): Point2 => [x, ys[i]!])
  }
  const meuse = samples('meuse.csv', 'zinc', Math.log)
  const fine = places('meuse_fine100k.csv')
  const grid = places('meuse_grid.csv')
  const z5000 = samples('synth5000.csv', 'z')
  const g5000 = samples('synth5000.csv', 'g')
  const g1000 = samples('synth1000.csv', 'g')
  const nodes = places('synth_nodes50k.csv')
  const spherical: VariogramModel = { nugget: 0.05, structures: [{ type: 'spherical', partialSill: 0.59, range: 897 }] }
  const wide: VariogramModel = { nugget: 10, structures: [{ type: 'exponential', partialSill: 25, range: 60 }] }

  const kriging = (name: string, gstat: string, scipy: string | undefined, points: readonly Sample[], targets: readonly Point2[],
    model: VariogramModel, options: KrigeOptions): Job => {
    let last: Kriged | undefined
    const middle = targets.length >> 1
    const halves = [targets.slice(0, middle), targets.slice(middle)] as const
    return {
      name, gstat, ...(scipy !== undefined && { scipy }), wanted: '3 x gstat',
      run: () => { last = krige(points, targets, model, options) },
      half: (which) => { krige(points, halves[which], model, options) },
      check: () => last === undefined ? {} : { 'mean_var1.pred': mean(last.means), 'mean_var1.var': mean(last.variances) },
    }
  }
  const leaveOneOut = (name: string, gstat: string, scipy: string | undefined, wanted: string, neighbours?: number): Job => {
    let last: ReturnType<typeof crossValidate> | undefined
    return {
      name, gstat, ...(scipy !== undefined && { scipy }), wanted, gstatRepeats: 1,
      run: () => { last = crossValidate(g1000, syntheticModel, { kind: 'ordinary', ...(neighbours !== undefined && { neighbours }) }) },
      check: () => last === undefined ? {} : { mean_residual: mean(last.residuals), 'mean_var1.var': mean(last.variances) },
    }
  }
  const lags: { last: ReturnType<typeof experimentalVariogram> } = { last: [] }
  return [
    kriging('155 data -> 100,000 points, all data', 'ok_fine100k_global', 'ok_fine100k_global', meuse, fine, spherical, { kind: 'ordinary' }),
    kriging('155 data -> 100,000 points, 32 neighbours', 'ok_fine100k_nmax32', 'ok_fine100k_nmax32', meuse, fine, spherical,
      { kind: 'ordinary', neighbours: 32 }),
    kriging('5,000 data -> 50,000 points, 32 neighbours', 'ok_synth5000_to_50k_nmax32', 'ok_synth5000_to_50k_nmax32', z5000, nodes, wide,
      { kind: 'ordinary', neighbours: 32 }),
    kriging('block 40 x 40, 16 Gauss points, 3,103 blocks, 32 neighbours', 'block40_meuse_grid_nmax32', undefined, meuse, grid, spherical,
      { kind: 'ordinary', neighbours: 32, block: [40, 40] }),
    {
      name: 'simulation, 1,000 data, 50,000 points, 100 realisations, 32 neighbours', gstat: 'sgs_50k_nsim100_nmax32_1000data', gstatRepeats: 1,
      wanted: '3 x gstat', check: () => ({}),
      run: () => { simulate(g1000, nodes, syntheticModel, { realisations: 100, seed: 1, mean: 0.21, neighbours: 32 }) },
    },
    {
      name: 'variogram of 5,000 points, cutoff 333', gstat: 'variogram_5000_cutoff333_w22', scipy: 'variogram_5000_cutoff333_w22', wanted: '3 x gstat',
      run: () => { lags.last = experimentalVariogram(g5000, { cutoff: 333, width: 22.2 }) },
      check: () => ({ mean_gamma: mean(lags.last.map(lag => lag.gamma)), mean_np: mean(lags.last.map(lag => lag.pairs)) }),
    },
    leaveOneOut('leave-one-out of 1,000, all data', 'loo_1000_global', 'loo_1000_global_one_inverse', 'numpy / 4'),
    leaveOneOut('leave-one-out of 1,000, 32 neighbours', 'loo_1000_nmax32', undefined, '10 x gstat', 32),
  ]
}
