import { performance } from 'node:perf_hooks'

export interface Timing { readonly median: number, readonly least: number }

/** Seconds around each call, after `warm` calls that do not count: the compiler has then seen the code, as in a running app. */
export function time(f: () => void, repeats: number, warm = 2): Timing {
  for (let i = 0; i < warm; i++) f()
  const seconds = Array.from({ length: repeats }, () => {
    const start = performance.now()
    f()
    return (performance.now() - start) / 1000
  }).sort((a, b) => a - b)
  return { median: seconds[Math.floor(repeats / 2)]!, least: seconds[0]! }
}
