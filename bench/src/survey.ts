import { adjustNetwork } from '@lodebook/reckon/survey'
import { inverse, Matrix } from 'ml-matrix'
import { readShots, inventWorkings } from '../../packages/reckon/test/survey/workings.ts'
import { machineLine } from './lib/machine.ts'
import { time } from './lib/timing.ts'

/** How the adjustment of a whole network grows with its stations; one loop for every twenty. The dense inverse is what it would cost without sparsity. */
export function run(): void {
  console.log(machineLine())
  console.log('Seconds: least of 3 after warming up (median in brackets). Adjusted: iterations, covariance of every station, every reading tested.')
  console.log(['stations', 'shots', 'loops', 'readings', 'adjusted', 'ms per station', 'dense inverse (ml-matrix)', 'heap MB'].join('\t'))
  for (const stations of [100, 300, 1000, 3000, 10000]) {
    const loops = stations / 20
    const workings = inventWorkings(stations, stations, loops)
    const shots = readShots(workings, 1)
    const input = { shots, ties: [{ station: 'A0', point: workings.points.get('A0')! }] }
    const ours = time(() => adjustNetwork(input), 3)
    const heap = process.memoryUsage().heapUsed / 1e6
    const dense = stations > 300 ? undefined : time(() => inverse(normalLike(3 * stations)), 1, 0)
    console.log([
      stations, shots.length, loops, 5 * shots.length, `${ours.least.toPrecision(3)} (${ours.median.toPrecision(3)})`, (1000 * ours.least / stations).toPrecision(3),
      dense ? dense.least.toPrecision(3) : '-', heap.toFixed(0),
    ].join('\t'))
  }
}

/** A full symmetric matrix of the size of the normal equations. */
function normalLike(size: number): Matrix {
  return new Matrix(Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => i === j ? 4 : 1 / (1 + Math.abs(i - j)))))
}
