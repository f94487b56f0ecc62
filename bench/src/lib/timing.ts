import { performance } from 'node:perf_hooks'

/** Seconds: least and median by the clock, and the median of processor time, which a busy machine does not stretch as it does the clock. */
export interface Timing { readonly least: number, readonly median: number, readonly processor: number }

/** A short job is warmed up for at least this long, in seconds: compiling in the background would count as its processor time. */
const WARM = 1

/** Times each call after `warm` calls or more that do not count: the compiler has then seen the code, as in a running app. */
export function time(f: () => void, repeats: number, warm = 2): Timing {
  const started = performance.now()
  for (let i = 0; i < warm || (warm > 0 && performance.now() - started < 1000 * WARM); i++) f()
  const runs = Array.from({ length: repeats }, () => {
    const start = performance.now()
    const before = process.cpuUsage()
    f()
    const { user, system } = process.cpuUsage(before)
    return { clock: (performance.now() - start) / 1000, processor: (user + system) / 1e6 }
  })
  const ascending = (values: readonly number[]) => [...values].sort((a, b) => a - b)
  const clock = ascending(runs.map(run => run.clock))
  return { least: clock[0]!, median: clock[repeats >> 1]!, processor: ascending(runs.map(run => run.processor))[repeats >> 1]! }
}
