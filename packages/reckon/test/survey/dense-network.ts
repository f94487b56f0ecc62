import { inverse, Matrix } from 'ml-matrix'
import type { Enu } from '../../src/core/index.ts'
import type { NetworkShot, Precision } from '../../src/survey/index.ts'

/**
 * The same adjustment as plainly as it can be written: one dense matrix, coefficients by differences, no tricks for steep sights, every
 * covariance by inverting everything. Foresights and backsights that are given are observations; station `fixed` is held. For comparison only.
 */
export function denseNetwork(shots: readonly NetworkShot[], fixed: string, points: ReadonlyMap<string, Enu>, precision: Precision) {
  const names = [...points.keys()].filter(name => name !== fixed)
  const rad = Math.PI / 180
  let x = names.flatMap(name => [...points.get(name)!])
  const at = (v: readonly number[], name: string): readonly number[] => {
    const i = names.indexOf(name)
    return i < 0 ? points.get(fixed)! : v.slice(3 * i, 3 * i + 3)
  }
  const observations = shots.flatMap((shot, index) => {
    const v = mean(shot.inclination!, shot.backInclination === undefined ? undefined : 0 - shot.backInclination)
    const centring = 2 * precision.centring ** 2 / shot.distance ** 2 / rad ** 2
    const azimuthSigma = Math.sqrt((precision.azimuth * Math.cos(v * rad)) ** 2 + (precision.levelling * Math.sin(v * rad)) ** 2 + centring) / Math.cos(v * rad)
    const inclinationSigma = Math.sqrt(precision.inclination ** 2 + centring)
    const distanceSigma = Math.sqrt(precision.distance ** 2 + (precision.distancePerLength * shot.distance) ** 2 + 2 * precision.centring ** 2)
    const leg = (u: readonly number[], from: string, to: string) => {
      const [a, b] = [at(u, from), at(u, to)]
      return [b[0]! - a[0]!, b[1]! - a[1]!, b[2]! - a[2]!] as const
    }
    const azimuth = (u: readonly number[], from: string, to: string) => { const [e, n] = leg(u, from, to); return Math.atan2(e, n) / rad }
    const tilt = (u: readonly number[], from: string, to: string) => { const [e, n, up] = leg(u, from, to); return Math.atan2(up, Math.hypot(e, n)) / rad }
    const { from, to } = shot
    return [
      { index, reading: 'distance', value: shot.distance, sigma: distanceSigma, of: (u: readonly number[]) => Math.hypot(...leg(u, from, to)) },
      { index, reading: 'azimuth', value: shot.azimuth, sigma: azimuthSigma, of: (u: readonly number[]) => azimuth(u, from, to) },
      { index, reading: 'backAzimuth', value: shot.backAzimuth, sigma: azimuthSigma, of: (u: readonly number[]) => azimuth(u, to, from) },
      { index, reading: 'inclination', value: shot.inclination, sigma: inclinationSigma, of: (u: readonly number[]) => tilt(u, from, to) },
      { index, reading: 'backInclination', value: shot.backInclination, sigma: inclinationSigma, of: (u: readonly number[]) => tilt(u, to, from) },
    ].filter(o => o.value !== undefined)
  })
  const misfit = (o: typeof observations[number], u: readonly number[]) => {
    const d = o.value! - o.of(u)
    return o.reading.endsWith('zimuth') ? d - 360 * Math.round(d / 360) : d
  }
  let jacobian = new Matrix(1, 1)
  let normal = jacobian
  for (let step = 0; step < 12; step++) {
    const step0 = x
    jacobian = new Matrix(observations.map(o => step0.map((_, k) => {
      const h = 1e-5
      const [up, down] = [h, -h].map(s => step0.map((value, i) => i === k ? value + s : value))
      return -(misfit(o, up!) - misfit(o, down!)) / (2 * h) / o.sigma
    })))
    normal = jacobian.transpose().mmul(jacobian)
    const right = jacobian.transpose().mmul(Matrix.columnVector(observations.map(o => misfit(o, step0) / o.sigma)))
    const move = inverse(normal).mmul(right).to1DArray()
    x = step0.map((value, i) => value + move[i]!)
    if (Math.max(...move.map(Math.abs)) < 1e-11) break
  }
  const covariance = inverse(normal)
  const hat = jacobian.mmul(covariance).mmul(jacobian.transpose())
  return {
    point: (name: string) => at(x, name),
    covariance: (a: string, b = a) => [0, 1, 2].map(i => [0, 1, 2].map(j => covariance.get(3 * names.indexOf(a) + i, 3 * names.indexOf(b) + j))),
    readings: observations.map((o, i) => {
      const redundancy = 1 - hat.get(i, i)
      const residual = misfit(o, x)
      return { shot: o.index, reading: o.reading, residual, sigma: o.sigma, redundancy, w: residual / o.sigma / Math.sqrt(redundancy) }
    }),
    chiSquare: observations.reduce((sum, o) => sum + (misfit(o, x) / o.sigma) ** 2, 0),
  }
}

const mean = (a: number, b: number | undefined) => b === undefined ? a : (a + b) / 2
