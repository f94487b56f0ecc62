import { join } from 'node:path'
import { choleskyBlocked } from '../../packages/reckon/src/geostatistics/linear/cholesky-blocked.ts'
import { choleskyPlain } from '../../packages/reckon/src/geostatistics/linear/cholesky.ts'
import { quadraticForm4, solveForward4 } from '../../packages/reckon/src/geostatistics/linear/interleaved.ts'
import { subtractProducts } from '../../packages/reckon/src/geostatistics/linear/subtract-products.ts'
import { machineLine } from './lib/machine.ts'
import { referenceTools, runKernels } from './lib/reference-tools.ts'
import { time } from './lib/timing.ts'

/** How much arithmetic each kernel gets done a second, beside numpy's matrix product and Cholesky factor on one thread. */
export function run(): void {
  const tools = referenceTools()
  const numpy = tools.scipy ? runKernels(join(import.meta.dirname, '../../../../bench/reference/kernels.py')) : undefined
  const peak = numpy?.['product_1500']
  console.log(machineLine(`OpenBLAS ${tools.openBlas ? 'yes' : 'no'}`))
  console.log(`GFLOP/s of double precision, processor time. numpy's matrix product: ${peak?.toFixed(1) ?? '-'}`)
  console.log(['kernel', 'n', 'ours', 'share of the product', 'numpy', 'share of numpy'].join('\t'))
  for (const n of [155, 500, 1000]) {
    const k = positiveDefinite(n)
    const l = k.slice()
    choleskyBlocked(l, n)
    const work = new Float64Array(n * n)
    const four = new Float64Array(4 * n)
    const out = new Float64Array(4)
    const repeat = Math.max(1, Math.floor(1000 / n)) ** 2
    const cubic = n ** 3 / 3
    print('Cholesky, plain', n, rate(cubic, repeat, () => { work.set(k); choleskyPlain(work, n) }), peak, numpy?.[`cholesky_${n}`])
    print('Cholesky, blocked', n, rate(cubic, repeat, () => { work.set(k); choleskyBlocked(work, n) }), peak, numpy?.[`cholesky_${n}`])
    print('four solves at once', n, rate(4 * n * n, 20 * repeat, () => { four.fill(1); solveForward4(l, n, n, four) }), peak)
    print('four quadratic forms at once', n, rate(4 * n * n, 20 * repeat, () => { quadraticForm4(k, n, n, four.fill(1), out) }), peak)
    print('products of rows (lower triangle)', n, rate(n * (n + 1) * 64, repeat, () => { subtractProducts(work, n, k, n, n, 0, n, 64) }), peak)
  }
}

const rate = (flops: number, repeat: number, f: () => void): number =>
  flops * repeat / time(() => { for (let i = 0; i < repeat; i++) f() }, 5).processor / 1e9

function print(kernel: string, n: number, ours: number, peak: number | undefined, numpy?: number): void {
  const share = (of: number | undefined) => of === undefined ? '-' : `${(100 * ours / of).toFixed(0)} %`
  console.log([kernel, n, ours.toFixed(2), share(peak), numpy?.toFixed(1) ?? '-', share(numpy)].join('\t'))
}

/** A covariance matrix of places spread evenly over a square. */
function positiveDefinite(n: number): Float64Array {
  return Float64Array.from({ length: n * n }, (_, at) => {
    const [i, j] = [Math.floor(at / n), at % n]
    const apart = (step: number) => (i * step) % 1 - (j * step) % 1
    return Math.exp(-Math.hypot(apart(Math.SQRT2), apart(Math.sqrt(3))) / 0.1) + (i === j ? 0.2 : 0)
  })
}
