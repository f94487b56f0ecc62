import { join } from 'node:path'
import { geostatisticsJobs } from './lib/geostatistics-jobs.ts'
import { benchData, checksDirectory } from './lib/bench-data.ts'
import { machineLine } from './lib/machine.ts'
import { referenceTools, runGstat, runScipy } from './lib/reference-tools.ts'
import type { ReferenceTiming } from './lib/reference-tools.ts'
import { time } from './lib/timing.ts'

const REPEATS = 5

/** Ours beside gstat and numpy/scipy: same data, same models, same run, one thread each. */
export function run(): void {
  const tools = referenceTools()
  const data = benchData()
  const scipy = tools.scipy ? runScipy(join(checksDirectory, 'speed_scipy.py'), data, 3) ?? {} : {}
  console.log(machineLine(`gstat ${tools.gstat ? 'yes' : 'no'}`, `numpy/scipy ${tools.scipy ? 'yes' : 'no'}`))
  console.log('Seconds: least of 5 after warming up (median in brackets); numpy/scipy least of 3. Ratio = theirs / ours, least against least.')
  console.log(['job', 'ours', 'gstat', 'ratio', 'numpy', 'ratio', 'wanted', 'agreement'].join('\t'))
  for (const job of geostatisticsJobs(data)) {
    const ours = time(job.run, REPEATS)
    const gstat = tools.gstat ? runGstat(join(checksDirectory, 'speed_gstat.R'), data, job.gstatRepeats ?? REPEATS, job.gstat)?.[job.gstat] : undefined
    const numpy = job.scipy === undefined ? undefined : scipy[job.scipy]
    const show = (timing: ReferenceTiming | undefined) => timing === undefined ? '-' : `${timing.min_s.toPrecision(3)} (${timing.median_s.toPrecision(3)})`
    const ratio = (timing: ReferenceTiming | undefined) => timing === undefined ? '-' : (timing.min_s / ours.least).toPrecision(3)
    console.log([
      job.name, `${ours.least.toPrecision(3)} (${ours.median.toPrecision(3)})`, show(gstat), ratio(gstat), show(numpy), ratio(numpy), job.wanted,
      gstat?.check === undefined ? '-' : agreement(job.check(), gstat.check),
    ].join('\t'))
  }
}

/** The largest relative difference of the means both report. */
function agreement(ours: Record<string, number>, theirs: Record<string, number>): string {
  const differences = Object.keys(ours).filter(name => name in theirs).map(name => Math.abs(ours[name]! - theirs[name]!) / Math.abs(theirs[name]!))
  return differences.length === 0 ? '-' : Math.max(...differences).toExponential(1)
}
