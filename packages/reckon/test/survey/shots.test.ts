import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Enu } from '../../src/core/index.ts'
import type { NetworkInput, NetworkShot, ShotReading, Tie } from '../../src/survey/index.ts'
import { adjustNetwork, azimuthOf, correctShot, errorEllipse, handPrecision, reduceShot, signedAngle } from '../../src/survey/index.ts'
import { randomSource } from './random.ts'
import { inventWorkings, readShots } from './workings.ts'

describe('reduceShot', () => {
  it('level distance is S cos v, rise S sin v', () => {
    const { vector } = reduceShot({ from: 'A', to: 'B', distance: 20, azimuth: 30, inclination: -30 })
    expect(vector[0]).toBeCloseTo(20 * Math.cos(Math.PI / 6) * 0.5, 12)
    expect(vector[1]).toBeCloseTo(20 * Math.cos(Math.PI / 6) ** 2, 12)
    expect(vector[2]).toBeCloseTo(-10, 12)
  })
  it('means foresight and backsight, across north too, and says how they differ', () => {
    const shot = reduceShot({ from: 'A', to: 'B', distance: 10, azimuth: 359, backAzimuth: 180.5, inclination: 4, backInclination: -5 })
    expect(shot.azimuth).toBeCloseTo(359.75, 12)
    expect(shot.inclination).toBeCloseTo(4.5, 12)
    expect(shot.azimuthDifference).toBeCloseTo(-1.5, 12)
    expect(shot.inclinationDifference).toBeCloseTo(-1, 12)
  })
  it('does not mean a needle read at both ends', () => {
    const shot = reduceShot({ from: 'A', to: 'B', distance: 10, azimuth: 20, backAzimuth: 20, inclination: 0 })
    expect(shot.azimuth).toBeCloseTo(20, 12)
    expect(shot.azimuthDifference).toBe(180)
  })
  it('its covariance is that of many readings (seeded simulation, 20,000 draws, 3 % of the largest)', () => {
    const precision = { distance: 0.03, distancePerLength: 0, azimuth: 1, inclination: 0.5, levelling: 0, centring: 0 }
    const { covariance } = reduceShot({ from: 'A', to: 'B', distance: 12, azimuth: 62, inclination: 35 }, precision)
    const random = randomSource(4)
    const draws = Array.from({ length: 20000 }, () => {
      const [s, a, v] = [12 + 0.03 * random.normal(), (62 + random.normal()) * Math.PI / 180, (35 + 0.5 * random.normal()) * Math.PI / 180]
      return [s * Math.cos(v) * Math.sin(a), s * Math.cos(v) * Math.cos(a), s * Math.sin(v)] as const
    })
    const mean = [0, 1, 2].map(i => draws.reduce((sum, d) => sum + d[i]!, 0) / draws.length)
    const largest = Math.max(...covariance.flat())
    for (const i of [0, 1, 2] as const) {
      for (const j of [0, 1, 2] as const) {
        const found = draws.reduce((sum, d) => sum + (d[i] - mean[i]!) * (d[j] - mean[j]!), 0) / draws.length
        expect(Math.abs(found - covariance[i][j])).toBeLessThan(0.03 * largest)
      }
    }
  })
  it('a network of one shot has the same vector and covariance', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(fc.property(between(1, 60), between(0, 360), between(-90, 90), fc.boolean(), (distance, azimuth, inclination, back) => {
      const shot: NetworkShot = { from: 'A', to: 'B', distance, azimuth, inclination, ...back && { backAzimuth: azimuthOf(azimuth + 181), backInclination: -inclination } }
      const one = reduceShot(shot)
      const station = adjustNetwork({ shots: [shot], ties: [{ station: 'A', point: [0, 0, 0] }] }).stations.get('B')!
      station.point.forEach((x, i) => { expect(Math.abs(x - one.vector[i]!)).toBeLessThan(1e-6 * distance) })
      const scale = Math.max(...station.sigma) ** 2
      station.covariance.flat().forEach((c, i) => { expect(Math.abs(c - one.covariance.flat()[i]!)).toBeLessThan(1e-6 * scale) })
    }), { seed: 5, numRuns: 100 })
  })
  it('needs an azimuth unless plumb', () => {
    expect(reduceShot({ from: 'A', to: 'B', distance: 10, inclination: 90 }).vector[2]).toBe(10)
    expect(() => reduceShot({ from: 'A', to: 'B', distance: 10, inclination: 80 })).toThrow(expect.objectContaining({ field: 'azimuth' }) as Error)
  })
})

describe('correctShot', () => {
  const shot = { from: 'A', to: 'B', distance: 10, azimuth: 350, backAzimuth: 171, inclination: 5, backInclination: -6, note: 'kept' }
  it('adds index corrections and declination, takes off convergence', () => {
    const corrected = correctShot(shot, { compass: 1, clinometer: 0.5, tape: 0.03, tapeFactor: 1.002, declination: 11, convergence: -2 })
    expect(corrected).toMatchObject({ azimuth: 4, backAzimuth: 185, inclination: 5.5, backInclination: -5.5, note: 'kept' })
    expect(corrected.distance).toBeCloseTo(10.05, 12)
    // a clinometer's index drops out of the mean of foresight and backsight
    expect(reduceShot(corrected).inclination).toBeCloseTo(reduceShot(shot).inclination, 12)
  })
  it('leaves a shot as it is without corrections, and never the given one', () => {
    expect(correctShot(Object.freeze({ ...shot }), {})).toEqual(shot)
    expect(correctShot({ from: 'A', to: 'B', distance: 5, inclination: 90 }, { clinometer: 0.4, declination: 5 })).toEqual({ from: 'A', to: 'B', distance: 5, inclination: 90 })
  })
  it.each([
    ['distance', { ...shot, distance: 0.01 }, { tape: -0.02 }], ['corrections.declination', shot, { declination: Number.NaN }],
    ['azimuth', { ...shot, azimuth: 370 }, {}], ['backInclination', { ...shot, backInclination: -95 }, {}],
  ])('refuses a bad %s', (field, readings, corrections) => {
    expect(() => correctShot(readings, corrections)).toThrow(expect.objectContaining({ name: 'InputError', field }) as Error)
  })
})

describe('bad readings are refused by name', () => {
  const good: NetworkShot = { from: 'A', to: 'B', distance: 10, azimuth: 10, inclination: 0 }
  const shots = (change: Partial<NetworkShot>): NetworkInput => ({ shots: [good, { ...good, from: 'B', to: 'C', ...change }], ties: [{ station: 'A', point: [0, 0, 0] }] })
  const ties = (...list: Tie[]): NetworkInput => ({ shots: [good], ties: list })
  it.each([
    ['shots[1].distance', shots({ distance: 0 })], ['shots[1].distance', shots({ distance: Number.NaN })], ['shots[1].distance', shots({ distance: -3 })],
    ['shots[1].azimuth', shots({ azimuth: 370 })], ['shots[1].azimuth', shots({ azimuth: Number.NaN })], ['shots[1].backAzimuth', shots({ backAzimuth: -1 })],
    ['shots[1].inclination', shots({ inclination: 95 })], ['shots[1].backInclination', shots({ backInclination: -90.1 })],
    ['shots[1].to', shots({ to: 'B' })], ['shots[1].from', shots({ from: ' ' })],
    ['shots[1].precision.azimuth', shots({ precision: { azimuth: -1 } })], ['shots[1].precision', shots({ precision: { distance: 0, distancePerLength: 0, centring: 0 } })],
    ['shots[1].leaveOut', shots({ leaveOut: ['rake'] as unknown as ShotReading[] })], ['shots[1].instruments', shots({ instruments: 'lost' })],
    ['ties[0].point[1]', ties({ station: 'A', point: [0, Number.NaN, 0] })], ['ties[0].sigma', ties({ station: 'A', point: [0, 0, 0], sigma: 0 })],
    ['ties[0].sigma[2]', ties({ station: 'A', point: [0, 0, 0], sigma: [1, 1, -1] })], ['ties[1].point', ties({ station: 'A', point: [0, 0, 0] }, { station: 'A', point: [0, 0, 1] })],
    ['ties[0].covariance', ties({ station: 'A', point: [0, 0, 0], covariance: [[1, 2, 0], [2, 1, 0], [0, 0, 1]] })],
    ['options.falseAlarm', { ...shots({}), options: { falseAlarm: 2 } }],
  ])('%s', (field, input) => {
    expect(() => adjustNetwork(input)).toThrow(expect.objectContaining({ name: 'InputError', field }) as Error)
  })
})

describe('the network turns and moves with its readings', () => {
  it('by any angle and offset', () => {
    const workings = inventWorkings(31, 25, 6)
    const shots = readShots(workings, 31)
    const plain = adjustNetwork({ shots, ties: [{ station: 'A0', point: [0, 0, 0] }] })
    const angle = 37
    const [sin, cos] = [Math.sin(angle * Math.PI / 180), Math.cos(angle * Math.PI / 180)]
    const turn = ([e, n, u]: Enu): Enu => [e * cos + n * sin, n * cos - e * sin, u]
    const turned = adjustNetwork({
      shots: shots.map(s => ({ ...s, azimuth: azimuthOf(s.azimuth + angle), backAzimuth: azimuthOf(s.backAzimuth + angle) })),
      ties: [{ station: 'A0', point: [300000, 5000000, 1000] }],
    })
    for (const [name, station] of plain.stations) {
      const expected = turn(station.point)
      const found = turned.stations.get(name)!
      ;[300000, 5000000, 1000].forEach((offset, i) => { expect(Math.abs(found.point[i]! - offset - expected[i]!)).toBeLessThan(1e-6) })
      if (station.held) continue
      expect(found.ellipse.major).toBeCloseTo(station.ellipse.major, 6)
      expect(found.ellipse.minor).toBeCloseTo(station.ellipse.minor, 6)
      const off = signedAngle(2 * (found.ellipse.azimuth - station.ellipse.azimuth - angle)) // an axis has no sense
      expect(Math.abs(off) * (station.ellipse.major - station.ellipse.minor)).toBeLessThan(1e-4)
    }
    expect(turned.test.chiSquare).toBeCloseTo(plain.test.chiSquare, 4)
  })
  it('scaled a thousandfold, in another unit, it is the same network', () => {
    const workings = inventWorkings(32, 20, 5)
    const shots = readShots(workings, 32)
    const big = { ...handPrecision, distance: 20, centring: 10 }
    const plain = adjustNetwork({ shots, ties: [{ station: 'A0', point: [0, 0, 0] }] })
    const scaled = adjustNetwork({ shots: shots.map(s => ({ ...s, distance: 1000 * s.distance })), ties: [{ station: 'A0', point: [0, 0, 0] }], options: { precision: big } })
    for (const [name, { point }] of plain.stations) {
      point.forEach((x, i) => { expect(Math.abs(scaled.stations.get(name)!.point[i]! / 1000 - x)).toBeLessThan(1e-6) })
    }
    expect(scaled.test.chiSquare).toBeCloseTo(plain.test.chiSquare, 4)
  })
})

describe('errorEllipse', () => {
  it('R 4.2.2: ellipses of points P and Q, checks/reference/adjust.json plane_network', () => {
    const p = errorEllipse([[1.87309390012754e-05, 1.03024654118094e-06, 0], [1.03024654118094e-06, 1.44750152420408e-05, 0], [0, 0, 0]])
    expect(p.major).toBeCloseTo(0.0043551368397639, 12)
    expect(p.minor).toBeCloseTo(0.00377342514835627, 12)
    expect(p.azimuth).toBeCloseTo(77.0830951940772, 8)
    const q = errorEllipse([[2.68513463162243e-05, -8.09305296575539e-06, 0], [-8.09305296575539e-06, 1.54630735333168e-05, 0], [0, 0, 0]])
    expect(q.major).toBeCloseTo(0.0055724948246875, 12)
    expect(q.azimuth).toBeCloseTo(117.435211761688, 8)
  })
  it('at 95 % is 2.4477 times the standard one (chi-square table, 5.991 with two degrees of freedom)', () => {
    expect(errorEllipse([[4, 0, 0], [0, 1, 0], [0, 0, 1]], 0.95).major).toBeCloseTo(2 * Math.sqrt(5.991464547), 8)
    expect(errorEllipse([[4, 0, 0], [0, 1, 0], [0, 0, 1]]).azimuth).toBe(90)
    expect(errorEllipse([[1, 0, 0], [0, 1, 0], [0, 0, 1]])).toEqual({ major: 1, minor: 1, azimuth: 0 })
  })
  it('refuses a confidence that is none', () => { expect(() => errorEllipse([[1, 0, 0], [0, 1, 0], [0, 0, 1]], 1)).toThrow('confidence') })
})

it('angles are brought into range without falling off its edge', () => {
  fc.assert(fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), (angle) => {
    const a = azimuthOf(angle)
    expect(a >= 0 && a < 360).toBe(true)
    const s = signedAngle(angle)
    expect(s > -180 && s <= 180).toBe(true)
  }), { seed: 6 })
  expect(azimuthOf(-1e-15)).toBe(0)
  expect(signedAngle(-180)).toBe(180)
})
