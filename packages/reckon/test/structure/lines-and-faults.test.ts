import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DegenerateError, drawsFrom } from '../../src/core/index.ts'
import type { Enu } from '../../src/core/index.ts'
import { axesOf, directionMean, faultOffset, meanPlane, normalCovariance, orientationTensor, slipVector, trueThickness, trueWidth, veinFrame } from '../../src/structure/index.ts'

const plane = { strike: 40, dip: 70 }

describe('true width', () => {
  it('is the taped length when the tape is square to the vein, and hardly minds a small slant', () => {
    const { normal } = axesOf(plane)
    const trend = Math.atan2(normal[0], normal[1]) * 180 / Math.PI
    const square = trueWidth({ length: 0.4, trend, plunge: -20 }, plane)
    expect(square.width).toBeCloseTo(0.4, 14)
    const slanted = trueWidth({ length: 0.4, trend, plunge: -20, directionSigma: 5 }, plane)
    expect(slanted.sigma).toBeGreaterThan(0)
    expect(slanted.sigma).toBeLessThan(0.4 * 0.01)
  })
  it('level across the strike it is L sin(dip); upright it is L cos(dip); down the dip nothing', () => {
    const across = trueWidth({ length: 1, trend: 130, plunge: 0 }, plane)
    expect(across.width).toBeCloseTo(Math.sin(70 * Math.PI / 180), 14)
    expect(trueWidth({ length: 1, trend: 0, plunge: 90 }, plane).width).toBeCloseTo(Math.cos(70 * Math.PI / 180), 14)
    const down = trueWidth({ length: 1, trend: 130, plunge: 70, directionSigma: 2 }, plane)
    expect(down.width).toBeLessThan(1e-15)
    expect(down.alongVein).toBe(true)
    expect(across.alongVein).toBe(false)
  })
  it('agrees with the thickness between the ends of the tape, and the sense of the tape does not matter', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 360, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true }), (trend, plunge) => {
      const [t, p] = [trend * Math.PI / 180, plunge * Math.PI / 180]
      const end: Enu = [2 * Math.cos(p) * Math.sin(t), 2 * Math.cos(p) * Math.cos(t), -2 * Math.sin(p)]
      expect(trueWidth({ length: 2, trend, plunge }, plane).width).toBeCloseTo(trueThickness(plane, [0, 0, 0], end), 12)
      expect(trueWidth({ length: 2, trend: trend + 180, plunge: -plunge }, plane).width).toBeCloseTo(trueThickness(plane, [0, 0, 0], end), 12)
    }), { seed: 6 })
  })
  it.each([[130, 0], [130, -20], [170, 10], [95, 10]])('states the doubt that drawn errors give (tape %i/%i)', (trend, plunge) => {
    const draws = drawsFrom(trend + plunge)
    const sigma = { strike: 3, dip: 4 }
    const told = trueWidth({ length: 0.5, trend, plunge, lengthSigma: 0.01, directionSigma: 6 }, { ...plane, normal: normalCovariance(plane, sigma) })
    const six = 6 * Math.PI / 180
    const widths = Array.from({ length: 20_000 }, () => {
      const [t, p] = [trend * Math.PI / 180, plunge * Math.PI / 180]
      const u = [Math.cos(p) * Math.sin(t), Math.cos(p) * Math.cos(t), -Math.sin(p)].map(v => v + six * draws.normal())
      const size = Math.hypot(...u)
      const n = axesOf({ strike: plane.strike + sigma.strike * draws.normal(), dip: plane.dip + sigma.dip * draws.normal() }).normal
      return (0.5 + 0.01 * draws.normal()) * Math.abs(u[0]! * n[0] + u[1]! * n[1] + u[2]! * n[2]) / size
    })
    const mean = widths.reduce((a, b) => a + b, 0) / widths.length
    const spread = Math.sqrt(widths.reduce((a, b) => a + (b - mean) ** 2, 0) / widths.length)
    expect(Math.abs(told.sigma / spread - 1)).toBeLessThan(0.05)
  })
  it('refuses a length of zero and a negative doubt', () => {
    expect(() => trueWidth({ length: 0, trend: 0, plunge: 0 }, plane)).toThrow('length')
    expect(() => trueWidth({ length: 1, trend: 0, plunge: 0, directionSigma: -1 }, plane)).toThrow('directionSigma')
    expect(() => trueWidth({ length: 1, trend: 0, plunge: 100 }, plane)).toThrow('tape.plunge')
  })
})

describe('direction mean', () => {
  it('of the same direction many times has no spread', () => {
    const mean = directionMean([1, 2, 3, 4].map(() => ({ trend: 77, plunge: 33 })))
    expect(mean.trend).toBeCloseTo(77, 12)
    expect(mean.plunge).toBeCloseTo(33, 12)
    expect(mean.kappa).toBe(Infinity)
    expect(mean.alpha95).toBe(0)
  })
  it('keeps its digits when readings nearly agree', () => {
    const mean = directionMean([{ trend: 0, plunge: 0 }, { trend: 1e-6, plunge: 0 }])
    const half = 0.5e-6 * Math.PI / 180
    expect(mean.kappa * (half * half)).toBeCloseTo(1, 7)
  })
  it('refuses one direction and directions that cancel out', () => {
    expect(() => directionMean([{ trend: 1, plunge: 1 }])).toThrow('too few')
    expect(() => directionMean([{ trend: 0, plunge: 0 }, { trend: 180, plunge: 0 }])).toThrow('no mean direction')
  })
  it('its cone holds the true mean about 95 times in 100', () => {
    const draws = drawsFrom(31)
    let held = 0
    for (let k = 0; k < 2000; k++) {
      // Fisher's distribution about straight down, concentration 30: Fisher, Lewis and Embleton's way of drawing it.
      const sample = Array.from({ length: 8 }, () => {
        const lambda = Math.exp(-60)
        const colatitude = 2 * Math.asin(Math.sqrt(-Math.log(draws.uniform() * (1 - lambda) + lambda) / 60))
        return { trend: 360 * draws.uniform(), plunge: 90 - colatitude * 180 / Math.PI }
      })
      const mean = directionMean(sample)
      if (90 - mean.plunge <= mean.alpha95) held++
    }
    expect(held / 2000).toBeGreaterThan(0.935)
    expect(held / 2000).toBeLessThan(0.965)
  })
})

describe('orientation tensor', () => {
  it('does not mind the sense of a line', () => {
    const lines = [{ trend: 10, plunge: 20 }, { trend: 40, plunge: 60 }, { trend: 100, plunge: 5 }, { trend: 220, plunge: 30 }]
    const turned = lines.map((l, i) => i % 2 ? l : { trend: (l.trend + 180) % 360, plunge: -l.plunge })
    const [a, b] = [orientationTensor(lines), orientationTensor(turned)]
    a.eigenvalues.forEach((v, i) => { expect(v).toBeCloseTo(b.eigenvalues[i]!, 13) })
    expect(a.eigenvalues[0] + a.eigenvalues[1] + a.eigenvalues[2]).toBeCloseTo(1, 14)
  })
  it('one line is a perfect cluster without Woodcock numbers; a girdle is square to its last axis', () => {
    const one = orientationTensor([{ trend: 50, plunge: 10 }])
    expect(one.eigenvalues[0]).toBeCloseTo(1, 14)
    expect(one.woodcock).toBeUndefined()
    const girdle = orientationTensor(Array.from({ length: 12 }, (_, i) => ({ trend: i * 15, plunge: 0 })))
    expect(girdle.axes[2].plunge).toBeCloseTo(90, 10)
    expect(girdle.vollmer.girdle).toBeCloseTo(1, 12)
  })
  it('the mean plane is safe across north and either side of upright', () => {
    const mean = meanPlane([{ strike: 358, dip: 88 }, { strike: 182, dip: 88 }])
    expect(mean.dip).toBeCloseTo(90, 6)
    expect(Math.min(mean.strike, 180 - mean.strike)).toBeLessThan(1e-6)
    expect(() => meanPlane([{ strike: 0, dip: 90 }, { strike: 90, dip: 90 }])).toThrow('no mean direction')
  })
})

describe('fault offset', () => {
  const vein = { strike: 0, dip: 90, point: [0, 0, 0] as Enu }
  const fault = { strike: 90, dip: 60, point: [0, 10, 0] as Enu } // dips south
  it('a strike slip of 5 m east moves an upright north-south vein 5 m along the fault', () => {
    const offset = faultOffset(vein, fault, [5, 0, 0])
    expect(offset.alongFaultStrike).toBeCloseTo(5, 12)
    expect(offset.downFaultDip).toBeUndefined() // the vein's trace runs straight down the fault's dip
    expect(offset.continuation.point).toEqual([5, 0, 0])
    expect(offset.onFault).toBeCloseTo(5, 12)
    expect(offset.cutoffLine.plunge).toBeCloseTo(60, 12)
    expect(offset.offFault).toBeCloseTo(0, 12)
  })
  it('dip slip does not displace that vein at all', () => {
    const offset = faultOffset(vein, fault, slipVector(fault, { alongStrike: 0, downDip: 12 }))
    expect(offset.onFault).toBeCloseTo(0, 12)
    expect(offset.alongFaultStrike).toBeCloseTo(0, 12)
  })
  it('walking each separation from the cut-off line on the fault lands on the continuation', () => {
    const angles = fc.record({ strike: fc.double({ min: 0, max: 360, noNaN: true }), dip: fc.double({ min: 5, max: 85, noNaN: true }) })
    const part = fc.double({ min: -50, max: 50, noNaN: true })
    fc.assert(fc.property(angles, angles, part, part, (v, f, alongStrike, downDip) => {
      const slip = slipVector(f, { alongStrike, downDip })
      let offset
      try { offset = faultOffset({ ...v, point: [3, 1, 4] }, { ...f, point: [3, 1, 4] }, slip) } catch (error) {
        expect(error).toBeInstanceOf(DegenerateError)
        return
      }
      fc.pre(Math.hypot(...offset.onFaultVector) < 1e4)
      const beyond = veinFrame(v, offset.continuation.point)
      const on = axesOf(f)
      const walk = (axis: Enu, k: number): Enu => [3 + axis[0] * k, 1 + axis[1] * k, 4 + axis[2] * k]
      expect(Math.abs(beyond.toVein(walk(offset.onFaultVector, 1)).off)).toBeLessThan(1e-8)
      for (const [axis, k] of [[on.strike, offset.alongFaultStrike], [on.dip, offset.downFaultDip]] as const) {
        if (k !== undefined && Math.abs(k) < 1e5) expect(Math.abs(beyond.toVein(walk(axis, k)).off)).toBeLessThan(1e-7)
      }
    }), { seed: 8, numRuns: 300 })
  })
  it('refuses a fault parallel to the vein', () => {
    expect(() => faultOffset(vein, { ...fault, strike: 180, dip: 90 }, [1, 0, 0])).toThrow('parallel')
    expect(() => faultOffset(vein, fault, [1, NaN, 0])).toThrow('slip[1]')
  })
})
