import { join } from 'node:path'
import { isMainThread } from 'node:worker_threads'
import { geostatisticsJobs } from './lib/geostatistics-jobs.ts'
import { benchData, checksDirectory } from './lib/bench-data.ts'
import { machineLine } from './lib/machine.ts'
import { referenceTools, runGstat, runScipy } from './lib/reference-tools.ts'
import type { ReferenceTiming } from './lib/reference-tools.ts'
import { time } from './lib/timing.ts'
import { serveHalf, timeTwoCores } from './lib/two-cores.ts'

const REPEATS = 5

/** Ours beside gstat and numpy/scipy: same data, same models, same run, one thread each. */
export async function run(): Promise<void> {
  const tools = referenceTools()
  const data = benchData()
  const scipy = tools.scipy ? runScipy(join(checksDirectory, 'speed_scipy.py'), data, 3) ?? {} : {}
  console.log(machineLine(`gstat ${tools.gstat ? 'yes' : 'no'}`, `numpy/scipy ${tools.scipy ? 'yes' : 'no'}`, `OpenBLAS ${tools.openBlas ? 'yes' : 'no'}`))
  console.log('Processor seconds, median (in brackets least by the clock). Ratio = theirs / ours, in processor seconds.')
  console.log('Two cores: one thread by the clock / two threads with half the targets each; it needs two idle cores to mean anything.')
  console.log(['job', 'ours', 'gstat', 'ratio', 'numpy', 'ratio', 'wanted', 'agreement', 'two cores'].join('\t'))
  for (const job of geostatisticsJobs(data)) {
    const ours = time(job.run, REPEATS)
    const gstat = tools.gstat ? runGstat(join(checksDirectory, 'speed_gstat.R'), data, job.gstatRepeats ?? REPEATS, job.gstat)?.[job.gstat] : undefined
    const numpy = job.scipy === undefined ? undefined : scipy[job.scipy]
    const show = (timing: ReferenceTiming | undefined) => timing === undefined ? '-' : `${figure(timing.median_cpu_s)} (${figure(timing.min_s)})`
    const ratio = (timing: ReferenceTiming | undefined) => timing === undefined ? '-' : figure(timing.median_cpu_s / ours.processor)
    console.log([
      job.name, `${figure(ours.processor)} (${figure(ours.least)})`, show(gstat), ratio(gstat), show(numpy), ratio(numpy), job.wanted,
      gstat?.check === undefined ? '-' : agreement(job.check(), gstat.check),
      job.half === undefined ? '-' : figure(ours.least / await timeTwoCores(import.meta.url, data, job.name, REPEATS)),
    ].join('\t'))
  }
}

const figure = (value: number) => value.toPrecision(3)

/** The largest relative difference of the means both report. */
function agreement(ours: Record<string, number>, theirs: Record<string, number>): string {
  const differences = Object.keys(ours).filter(name => name in theirs).map(name => Math.abs(ours[name]! - theirs[name]!) / Math.abs(theirs[name]!))
  return differences.length === 0 ? '-' : Math.max(...differences).toExponential(1)
}

if (!isMainThread) serveHalf()
