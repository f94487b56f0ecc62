import { describe, expect, it } from 'vitest'
import type { NetworkShot } from '../../src/survey/index.ts'
import { adjustNetwork, handPrecision } from '../../src/survey/index.ts'
import { denseNetwork } from './dense-network.ts'
import { exactShot, inventWorkings, readShots } from './workings.ts'

const freeze = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) { Object.freeze(value); Object.values(value).forEach(freeze) }
  return value
}

// metres: a thousandth of what a crew reads; the two solvers stop at 1e-7 and 1e-11
const samePoint = 1e-6

describe('the sparse adjustment against the plain dense one', () => {
  it.each([[1, 12, 0], [2, 15, 3], [3, 30, 6], [4, 30, 12]])('seed %i: %i stations with %i loops', (seed, stations, loops) => {
    const workings = inventWorkings(seed, stations, loops)
    const shots = freeze(readShots(workings, seed + 100))
    const a0 = workings.points.get('A0')!
    const names = [...workings.points.keys()]
    const result = adjustNetwork({ shots, ties: freeze([{ station: 'A0', point: a0 }]), options: { pairs: [['A3', 'A9'], ['A11', 'A2']] } })
    const dense = denseNetwork(shots, 'A0', workings.points, handPrecision)

    expect(result.converged).toBe(true)
    for (const name of names.slice(1)) {
      const station = result.stations.get(name)!
      station.point.forEach((x, i) => { expect(Math.abs(x - dense.point(name)[i]!)).toBeLessThan(samePoint) })
      const scale = Math.max(...station.sigma) ** 2
      dense.covariance(name).forEach((row, i) => { row.forEach((c, j) => { expect(Math.abs(station.covariance[i]![j]! - c) / scale).toBeLessThan(1e-5) }) })
    }
    for (const pair of result.pairs) {
      const scale = Math.max(...pair!.covariance.flat().map(Math.abs))
      dense.covariance(pair!.a, pair!.b).forEach((row, i) => {
        row.forEach((c, j) => { expect(Math.abs(pair!.covariance[i]![j]! - c) / scale).toBeLessThan(1e-5) })
      })
    }
    expect(result.readings.length).toBe(dense.readings.length)
    dense.readings.forEach((expected, i) => {
      const reading = result.readings[i]!
      expect([reading.shot, reading.reading]).toEqual([expected.shot, expected.reading])
      expect(reading.sigma).toBeCloseTo(expected.sigma, 10)
      expect(Math.abs(reading.residual - expected.residual) / expected.sigma).toBeLessThan(1e-4)
      expect(Math.abs(reading.redundancy! - expected.redundancy)).toBeLessThan(1e-5)
      if (expected.redundancy > 0.01) expect(Math.abs(reading.w! - expected.w)).toBeLessThan(1e-3)
    })
    expect(Math.abs(result.test.chiSquare - dense.chiSquare)).toBeLessThan(1e-5 * dense.chiSquare)
    const sum = result.readings.reduce((total, r) => total + r.redundancy!, 0)
    expect(sum).toBeCloseTo(result.test.redundancy, 6)
    expect(result.test.redundancy).toBe(result.readings.length - 3 * (stations - 1))
  })
})

describe('adjustNetwork', () => {
  it('gives exact points for exact readings, also on plumb and nearly plumb sights', () => {
    const points = new Map([
      ['P', [5e5, 4.2e6, 1800]], ['A', [500010, 4200004, 1801]], ['B', [500010, 4200004, 1780]], ['C', [500010.2, 4200003.9, 1770]], ['D', [500001, 4199990, 1772]],
    ] as const)
    const plumb: NetworkShot = { from: 'A', to: 'B', distance: 21, inclination: -90 }
    const legs = [['P', 'A'], ['B', 'C'], ['C', 'D'], ['D', 'P'], ['C', 'B']] as const
    const result = adjustNetwork({ shots: [...legs.map(leg => exactShot(points, leg)), plumb], ties: [{ station: 'P', point: points.get('P')! }] })
    expect(result.converged).toBe(true)
    for (const [name, point] of points) result.stations.get(name)!.point.forEach((x, i) => { expect(Math.abs(x - point[i]!)).toBeLessThan(2e-7) })
    expect(result.suspects).toEqual([])
    expect(result.cautions).toEqual([])
    expect(result.test.chiSquare).toBeLessThan(1e-6)
  })

  it('leaves a plumbed station as uncertain sideways as its plumb, in both directions', () => {
    const result = adjustNetwork({ shots: [{ from: 'A', to: 'B', distance: 20, inclination: 90 }], ties: [{ station: 'A', point: [0, 0, 0] }], options: { precision: { inclination: 1, centring: 0 } } })
    const { point, sigma, ellipse } = result.stations.get('B')!
    expect(point[2]).toBeCloseTo(20, 12)
    expect(sigma[0]).toBeCloseTo(20 * Math.PI / 180, 12)
    expect(sigma[1]).toBeCloseTo(20 * Math.PI / 180, 12)
    expect(ellipse.major / ellipse.minor).toBeCloseTo(1, 9)
  })

  it('a steep azimuth counts less: its error goes with the tangent, and beyond 87° nothing jumps', () => {
    const across = (inclination: number) => {
      const { covariance } = adjustNetwork({
        shots: [{ from: 'A', to: 'B', distance: 10, azimuth: 0, inclination }], ties: [{ station: 'A', point: [0, 0, 0] }], options: { precision: { centring: 0 } },
      }).stations.get('B')!
      return Math.sqrt(covariance[0][0])
    }
    const expected = 10 * 0.7 * Math.PI / 180 // compass and levelling equally good: the same at any inclination
    for (const inclination of [0, 30, 60, 85, 87, 87.2, 89, 90, -89.9]) expect(across(inclination)).toBeCloseTo(expected, 9)
  })

  it('returns parts that hang on nothing, measured from their own first station, and never throws', () => {
    const shot = (from: string, to: string): NetworkShot => ({ from, to, distance: 10, azimuth: 90, inclination: 0 })
    const result = adjustNetwork({ shots: [shot('A', 'B'), shot('X', 'Y'), shot('Y', 'Z'), { ...shot('B', 'C'), leaveOut: 'shot' }], ties: [{ station: 'A', point: [100, 200, 300] }] })
    expect(result.parts.map(p => [p.stations, p.located, p.anchor])).toEqual([[['A', 'B'], true, undefined], [['X', 'Y', 'Z'], false, 'X'], [['C'], false, 'C']])
    expect([...result.stations.keys()]).toEqual(['A', 'B'])
    expect([...result.floating.keys()]).toEqual(['X', 'Y', 'Z', 'C'])
    expect(result.floating.get('X')!.point).toEqual([0, 0, 0])
    expect(result.floating.get('Z')!.point[0]).toBeCloseTo(20, 9)
    expect(result.shots[3]!.distance).toBeNull()
    expect(result.cautions).toEqual(['no tie places X, Y, Z', 'no tie places C'])
  })

  it('a station may be used before it is tied', () => {
    const shots: NetworkShot[] = [{ from: 'A', to: 'B', distance: 10, azimuth: 0, inclination: 0 }, { from: 'B', to: 'C', distance: 10, azimuth: 0, inclination: 0 }]
    const result = adjustNetwork({ shots, ties: [{ station: 'C', point: [0, 0, 0] }] })
    expect(result.stations.get('A')!.point[1]).toBeCloseTo(-20, 9)
  })

  it('names the stations that lost their only azimuth, and still places the rest', () => {
    const shots: NetworkShot[] = [
      { from: 'A', to: 'B', distance: 10, azimuth: 0, inclination: 0 },
      { from: 'B', to: 'C', distance: 10, azimuth: 0, inclination: 0, leaveOut: ['azimuth'] },
      { from: 'C', to: 'D', distance: 10, azimuth: 0, inclination: 0 },
    ]
    const result = adjustNetwork({ shots, ties: [{ station: 'A', point: [0, 0, 0] }] })
    expect(result.undetermined).toEqual(['C', 'D'])
    expect([...result.stations.keys()]).toEqual(['A', 'B'])
    expect(result.cautions).toEqual(['the readings in use do not place C, D'])
    // a second way in determines them again
    const again = adjustNetwork({ shots: [...shots, { from: 'A', to: 'D', distance: 30, azimuth: 0, inclination: 0 }], ties: [{ station: 'A', point: [0, 0, 0] }] })
    expect(again.undetermined).toEqual([])
    expect(again.stations.get('C')!.point[1]).toBeCloseTo(20, 6)
  })

  it('weighs ties by their accuracy, and holds a component that none gives', () => {
    const shots: NetworkShot[] = [{ from: 'A', to: 'B', distance: 10, azimuth: 90, inclination: 0 }]
    const result = adjustNetwork({ shots, ties: [{ station: 'A', point: [0, 0, 7], sigma: [3, 3, Infinity] }, { station: 'B', point: [16, 0, 0], sigma: [3, 3, Infinity] }] })
    expect(result.stations.get('A')!.point[0]).toBeCloseTo(3, 3)
    expect(result.stations.get('A')!.point[2]).toBeCloseTo(7, 9)
    expect(result.stations.get('A')!.sigma[0]).toBeCloseTo(3 / Math.SQRT2, 3)
    expect(result.parts[0]!.assumed).toEqual(['up'])
    expect(result.cautions).toEqual(['no tie gives up for A, B: the first tie\'s own value is held'])
  })

  it('a tie with correlated errors gives the station its covariance, and residuals in east, north and up', () => {
    const covariance = [[4, 1.5, 0.2], [1.5, 2, -0.3], [0.2, -0.3, 9]] as const
    const shots: NetworkShot[] = [{ from: 'A', to: 'B', distance: 10, azimuth: 90, inclination: 0 }]
    const one = adjustNetwork({ shots, ties: [{ station: 'A', point: [1, 2, 3], covariance }] })
    one.stations.get('A')!.covariance.flat().forEach((c, i) => { expect(c).toBeCloseTo(covariance.flat()[i]!, 9) })
    // two such ties: the mean with half the covariance; each is off by half the difference, with redundancy one half
    const two = adjustNetwork({ shots, ties: [{ station: 'A', point: [1, 2, 3], covariance }, { station: 'A', point: [3, 2, 3], covariance }] })
    expect(two.stations.get('A')!.point[0]).toBeCloseTo(2, 9)
    two.stations.get('A')!.covariance.flat().forEach((c, i) => { expect(c).toBeCloseTo(covariance.flat()[i]! / 2, 9) })
    const east = two.readings.find(r => r.tie === 1 && r.reading === 'east')!
    expect(east.residual).toBeCloseTo(1, 9)
    expect(east.redundancy).toBeCloseTo(0.5, 9)
    // w = (P v)_i / sqrt((P Qv P)_ii) with Qv = C / 2: here e_1 C^-1 v over sqrt(e_1 C^-1 e_1 / 2)
    const determinant = 4 * (2 * 9 - 0.09) - 1.5 * (1.5 * 9 + 0.06) + 0.2 * (-0.45 - 0.4)
    const weight = (2 * 9 - 0.09) / determinant
    expect(east.w).toBeCloseTo(weight * 1 / Math.sqrt(weight / 2), 9)
  })

  it('estimates an error that all shots of one compass share, when a second tie shows it', () => {
    const shots: NetworkShot[] = [1, 2, 3, 4].map(i => ({ from: `A${i - 1}`, to: `A${i}`, distance: 25, azimuth: 92, inclination: 0, instruments: 'old compass' }))
    const ties = [{ station: 'A0', point: [0, 0, 0] as const }, { station: 'A4', point: [100, 0, 0] as const }]
    const options = { precision: { azimuth: 0.05, levelling: 0, centring: 0, distance: 0.005 } }
    const withSet = adjustNetwork({ shots, ties, options: { ...options, instruments: { 'old compass': { azimuth: 3 } } } })
    const { errors, sigma } = withSet.instruments.get('old compass')!
    expect(errors[0]).toBeGreaterThan(1.99)
    expect(errors[0]).toBeLessThan(2.01)
    expect(sigma[0]).toBeLessThan(0.03)
    expect(errors.slice(1)).toEqual([0, 0])
    expect(withSet.suspects).toEqual([])
    const without = adjustNetwork({ shots: shots.map(shot => ({ ...shot, instruments: undefined })), ties, options })
    expect(without.test.p).toBeLessThan(1e-6)
    // with one tie only, the shared error turns the whole line and says so in its ellipse
    const open = adjustNetwork({ shots, ties: ties.slice(0, 1), options: { ...options, instruments: { 'old compass': { azimuth: 3 } } } })
    expect(open.stations.get('A4')!.ellipse.major).toBeGreaterThan(100 * 3 * Math.PI / 180)
  })

  it('compares readings that are left out with the result, and gives them no say', () => {
    const shots: NetworkShot[] = [{ from: 'A', to: 'B', distance: 10, azimuth: 40, backAzimuth: 229.8, inclination: 0, leaveOut: ['backAzimuth'] }]
    const result = adjustNetwork({ shots, ties: [{ station: 'A', point: [0, 0, 0] }] })
    const back = result.readings.find(r => r.reading === 'backAzimuth')!
    expect(back).toMatchObject({ leftOut: true, w: null, redundancy: null, observed: 229.8 })
    expect(back.residual).toBeCloseTo(9.8, 9)
    expect(result.shots[0]!.azimuth).toBeCloseTo(40, 9)
    expect(result.shots[0]!.azimuthDifference).toBeCloseTo(-9.8, 9)
  })

  it('reports a loop that misses by metres, and does not throw', () => {
    const workings = inventWorkings(8, 12, 0)
    const shots = readShots(workings, 8)
    const closing = exactShot(workings.points, ['A11', 'A0'])
    const result = adjustNetwork({ shots: [...shots, { ...closing, distance: closing.distance + 8 }], ties: [{ station: 'A0', point: [0, 0, 0] }] })
    expect(result.suspects[0]).toMatchObject({ shot: 11, reading: 'distance' })
    expect(result.suspects[0]!.blunder).toBeGreaterThan(7)
    expect(result.test.p).toBeLessThan(1e-6)
    expect(result.cautions.some(c => c.includes('still in use'))).toBe(true)
  })

  it('takes a shot without inclination as level, and says so', () => {
    const result = adjustNetwork({ shots: [{ from: 'A', to: 'B', distance: 10, azimuth: 0 }], ties: [{ station: 'A', point: [0, 0, 0] }] })
    expect(result.stations.get('B')!.sigma[2]).toBeCloseTo(Math.hypot(10 * 3 * Math.PI / 180, 0.01 * Math.SQRT2), 9)
    expect(result.cautions).toEqual(['1 shot has no inclination and is taken as level'])
  })

  it('answers for nothing, for ties alone and for one shot', () => {
    expect(adjustNetwork({ shots: [], ties: [] })).toMatchObject({
      parts: [], readings: [], suspects: [], converged: true, test: { redundancy: 0, varianceFactor: null, p: null },
    })
    expect(adjustNetwork({ shots: [], ties: [{ station: 'A', point: [1, 2, 3] }] }).stations.get('A')).toMatchObject({ point: [1, 2, 3], held: true })
    expect(adjustNetwork({ shots: [], ties: [{ station: 'A', point: [1, 2, 3], sigma: 2 }] }).stations.get('A')!.sigma[1]).toBeCloseTo(2, 12)
  })
})
