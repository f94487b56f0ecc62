import { once } from 'node:events'
import { performance } from 'node:perf_hooks'
import { parentPort, Worker, workerData } from 'node:worker_threads'
import { geostatisticsJobs } from './geostatistics-jobs.ts'

interface Task { readonly data: string, readonly job: string, readonly which: 0 | 1 }

/** Least seconds by the clock for two threads, each with half the targets; both have warmed up. */
export async function timeTwoCores(script: string, data: string, job: string, repeats: number): Promise<number> {
  const workers = ([0, 1] as const).map(which => new Worker(new URL(script), { workerData: { data, job, which } satisfies Task }))
  await Promise.all(workers.map(worker => once(worker, 'message')))
  let least = Infinity
  for (let i = 0; i < repeats; i++) {
    const start = performance.now()
    const done = workers.map(worker => once(worker, 'message'))
    for (const worker of workers) worker.postMessage('go')
    await Promise.all(done)
    least = Math.min(least, (performance.now() - start) / 1000)
  }
  await Promise.all(workers.map(worker => worker.terminate()))
  return least
}

/** The other end: does its half each time it is told to. */
export function serveHalf(): void {
  const { data, job: name, which } = workerData as Task
  const job = geostatisticsJobs(data).find(candidate => candidate.name === name)
  for (let i = 0; i < 2; i++) job?.half?.(which)
  parentPort?.on('message', () => {
    job?.half?.(which)
    parentPort?.postMessage('done')
  })
  parentPort?.postMessage('ready')
}
