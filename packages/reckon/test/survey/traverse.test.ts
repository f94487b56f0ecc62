import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { TraverseLeg } from '../../src/survey/index.ts'
import { adjustNetwork, azimuthOf, traverse } from '../../src/survey/index.ts'
import { azimuthFrom } from '../../src/units/index.ts'

type Row = readonly [from: string, to: string, length: number, azimuth: string]
const legsOf = (rows: readonly Row[]): TraverseLeg[] => rows.map(([from, to, length, azimuth]) => ({ from, to, length, azimuth: azimuthFrom(azimuth, 'azimuth') }))

const mahun = legsOf([['A', 'B', 472.68, 'S68-05-35W'], ['B', 'C', 216.13, 'N19-46-00W'], ['C', 'D', 276.52, 'N45-55-20E'], ['D', 'A', 382.24, 'S54-59-15E']])
const mahunStart = { station: 'A', point: [2000, 500, 0] } as const
const wolf = legsOf([['A', 'B', 647.25, '126-55-17'], ['B', 'C', 203.03, '178-18-58'], ['C', 'D', 720.35, '15-31-54'], ['D', 'E', 610.24, '284-35-20'], ['E', 'A', 285.13, '206-09-41']])
const wolfStart = { station: 'A', point: [10000, 5000, 0] } as const

const footTolerance = 0.001 // printed to 0.001 ft
const arcsecond = 1 / 3600

describe('V: J. Mahun, Open Access Surveying, Traverse Computations ch. E, fig. E-6 (ft)', () => {
  const result = traverse({ legs: mahun, start: mahunStart, rule: 'compass' })
  it('misclosure: latitude +0.083, departure +0.075', () => {
    expect(Math.abs(result.misclosure[1] - 0.083)).toBeLessThan(footTolerance)
    expect(Math.abs(result.misclosure[0] - 0.075)).toBeLessThan(footTolerance)
    expect(result.misclosure[2]).toBe(0)
    expect(result.ratio).toBeCloseTo(1347.57 / Math.hypot(...result.misclosure), 6)
  })
  it.each([
    [0, 472.715, 'S68-05-27.4W'],
    [1, 216.122, 'N19-46-14.9W'],
    [2, 276.497, 'N45-55-20.7E'], // the page prints 276.479, two digits swapped: its own latitude and departure give 276.496
    [3, 382.237, 'S54-58-58.0E'],
  ])('adjusted leg %i: %d at %s', (i, length, bearing) => {
    expect(Math.abs(result.legs[i]!.length - length)).toBeLessThan(footTolerance)
    expect(Math.abs(result.legs[i]!.azimuth - azimuthFrom(bearing, 'azimuth'))).toBeLessThan(arcsecond)
  })
  it.each([['B', 323.614, 1561.426], ['C', 526.996, 1488.321], ['D', 719.336, 1686.956]])('R: station %s at N %d, E %d', (name, north, east) => {
    const [e, n] = result.stations.get(name)!
    expect(Math.abs(n - north)).toBeLessThan(footTolerance)
    expect(Math.abs(e - east)).toBeLessThan(footTolerance)
  })
  it.each([['B', 323.6253, 1561.4559], ['C', 527.0111, 1488.3381], ['D', 719.3737, 1686.9797]])('R: least squares with 0.01 ft and 30", station %s at N %d, E %d', (name, north, east) => {
    const sigma = { length: 0.01, angle: 30 * arcsecond }
    const adjusted = traverse({ legs: mahun, start: mahunStart, rule: 'least-squares', sigma })
    const [e, n] = adjusted.stations.get(name)!
    expect(Math.abs(n - north)).toBeLessThan(1e-4)
    expect(Math.abs(e - east)).toBeLessThan(1e-4)
    // and the network adjustment, which linearises each reading anew, comes to the same
    const network = adjustNetwork({
      shots: mahun.map(({ length, ...leg }) => ({ ...leg, distance: length, inclination: 0 })), ties: [mahunStart],
      options: { precision: { distance: 0.01, distancePerLength: 0, azimuth: 30 * arcsecond, inclination: 30 * arcsecond, levelling: 0, centring: 0 } },
    })
    const station = network.stations.get(name)!
    expect(Math.abs(station.point[1] - north)).toBeLessThan(1e-4)
    expect(Math.abs(station.point[0] - east)).toBeLessThan(1e-4)
    const expected = station.covariance.flat()
    adjusted.covariance!.get(name)!.flat().forEach((c, i) => { expect(Math.abs(c - expected[i]!)).toBeLessThan(1e-3 * station.ellipse.major ** 2) })
  })
})

describe('V-part: Wolf & Ghilani, Elementary Surveying, the traverse at A (10000, 5000)', () => {
  const result = traverse({ legs: wolf, start: wolfStart, rule: 'compass' })
  it('V: misclosure 0.027 and 0.075, linear 0.080; M: 1 in 31,000', () => {
    expect(Math.abs(result.misclosure[0] - 0.027)).toBeLessThan(footTolerance)
    expect(Math.abs(result.misclosure[1] - 0.075)).toBeLessThan(footTolerance)
    expect(Math.abs(result.misclosureLength - 0.08)).toBeLessThan(footTolerance)
    expect(Math.abs(result.ratio! - 30800)).toBeLessThan(100)
  })
  it.each([['B', 10517.444, 4611.165], ['C', 10523.408, 4408.216], ['D', 10716.289, 5102.239], ['E', 10125.717, 5255.929]])('R, M: station %s at X %d, Y %d', (name, x, y) => {
    const [e, n] = result.stations.get(name)!
    expect(Math.abs(e - x)).toBeLessThan(footTolerance)
    expect(Math.abs(n - y)).toBeLessThan(footTolerance)
  })
})

it('V: traverse table, 725.32 ft at N15-30E: latitude 698.94 and departure 193.83 (US Navy, NAVEDTRA 14070 p. 7-12; the table itself is 0.04 low)', () => {
  const { misclosure } = traverse({ legs: [{ from: 'A', to: 'B', length: 725.32, azimuth: 15.5 }], start: { station: 'A', point: [0, 0, 0] }, end: { station: 'B', point: [0, 0, 0] }, rule: 'compass' })
  expect(Math.abs(misclosure[1] - 698.94)).toBeLessThan(0.05)
  expect(Math.abs(misclosure[0] - 193.833)).toBeLessThan(footTolerance)
})

it('R 4.2.2: compass rule of checks/reference/adjust.json, misclosure of 0.9 m', () => {
  const { traverse_compass_rule: reference } = JSON.parse(readFileSync(new URL('../../../../checks/reference/adjust.json', import.meta.url), 'utf8')) as {
    traverse_compass_rule: Record<'adjusted_dE' | 'adjusted_dN', number[]> & Record<'misclosure_E' | 'misclosure_N' | 'relative', number> & {
      legs: { dist: number, az: number }[]
    }
  }
  const names = ['A', 'B', 'C', 'D', 'E', 'A']
  const legs = reference.legs.map(({ dist, az }, i) => ({ from: names[i]!, to: names[i + 1]!, length: dist, azimuth: az }))
  const result = traverse({ legs, start: { station: 'A', point: [0, 0, 0] }, rule: 'compass' })
  expect(result.misclosure[0]).toBeCloseTo(reference.misclosure_E, 10)
  expect(result.misclosure[1]).toBeCloseTo(reference.misclosure_N, 10)
  expect(result.ratio).toBeCloseTo(reference.relative, 6)
  const [e, n] = [0, 1].map(c => reference[c === 0 ? 'adjusted_dE' : 'adjusted_dN'].reduce<number[]>((sums, d) => [...sums, (sums.at(-1) ?? 0) + d], []))
  names.slice(1, 5).forEach((name, i) => {
    expect(result.stations.get(name)![0]).toBeCloseTo(e![i]!, 9)
    expect(result.stations.get(name)![1]).toBeCloseTo(n![i]!, 9)
  })
})

describe('least squares and the compass rule', () => {
  it.each([
    ['Mahun', mahun, mahunStart], ['Wolf & Ghilani', wolf, wolfStart],
  ] as const)('M: with equal errors in all directions, growing with the root of length, they are one (Bowditch 1808): %s', (_, legs, start) => {
    const compass = traverse({ legs, start, rule: 'compass' })
    const variance = 1e-6 // per foot of length
    const network = adjustNetwork({
      shots: legs.map(({ length, ...leg }) => {
        const angle = Math.sqrt(variance / length) * 180 / Math.PI
        const precision = { distance: Math.sqrt(variance * length), distancePerLength: 0, azimuth: angle, inclination: angle, levelling: 0, centring: 0 }
        return { ...leg, distance: length, inclination: 0, precision }
      }), ties: [start],
    })
    for (const [name, point] of compass.stations) {
      network.stations.get(name)!.point.forEach((x, i) => { expect(Math.abs(x - point[i]!)).toBeLessThan(footTolerance) })
    }
    const unweighted = traverse({ legs, start, rule: 'least-squares' })
    for (const [name, point] of compass.stations) expect(unweighted.stations.get(name)).toEqual(point)
  })

  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  const leg = fc.record({ length: between(1, 50), azimuth: between(0, 359), inclination: between(-80, 80) })
  const route = fc.array(leg, { minLength: 2, maxLength: 9 }).map(legs => legs.map((l, i): TraverseLeg => ({ ...l, from: `S${i}`, to: `S${i + 1}` })))
  const end = (legs: readonly TraverseLeg[]) => ({ station: `S${legs.length}`, point: [3, 2, 1] as const })
  it('turn with the azimuths, and move with the start', () => {
    fc.assert(fc.property(route, fc.double({ min: 0, max: 360, noNaN: true }), fc.constantFrom('compass' as const, 'least-squares' as const), (legs, angle, rule) => {
      const [sin, cos] = [Math.sin(angle * Math.PI / 180), Math.cos(angle * Math.PI / 180)]
      const turn = ([e, n, u]: readonly [number, number, number]) => [e * cos + n * sin + 100, n * cos - e * sin - 50, u + 7] as const
      const sigma = { length: 0.02, angle: 0.5 }
      const plain = traverse({ legs, start: { station: 'S0', point: [0, 0, 0] }, end: end(legs), rule, sigma })
      const turned = traverse({
        legs: legs.map(l => ({ ...l, azimuth: azimuthOf(l.azimuth + angle) })), start: { station: 'S0', point: turn([0, 0, 0]) },
        end: { ...end(legs), point: turn(end(legs).point) }, rule, sigma,
      })
      for (const [name, point] of plain.stations) turn(point).forEach((x, i) => { expect(Math.abs(turned.stations.get(name)![i]! - x)).toBeLessThan(1e-6) })
    }), { seed: 3, numRuns: 60 })
  })
  it('close exactly, and leave a traverse that closes as it is', () => {
    fc.assert(fc.property(route, (legs) => {
      const open = traverse({ legs, start: { station: 'S0', point: [0, 0, 0] }, end: end(legs), rule: 'compass' })
      const reached = [0, 1, 2].map(i => end(legs).point[i]! + open.misclosure[i]!) as unknown as readonly [number, number, number]
      const closed = traverse({ legs, start: { station: 'S0', point: [0, 0, 0] }, end: { station: `S${legs.length}`, point: reached }, rule: 'compass' })
      closed.legs.forEach((l, i) => { expect(Math.abs(l.length - legs[i]!.length)).toBeLessThan(1e-9) })
    }), { seed: 4, numRuns: 60 })
  })
  it('share the doubt of the misclosure when no sigma is stated', () => {
    const { covariance, misclosureLength } = traverse({ legs: wolf, start: wolfStart, rule: 'least-squares' })
    const total = 2466
    const perFoot = misclosureLength ** 2 / 2 / total // misclosure squared over two conditions, per foot
    const c = covariance!.get('B')!
    expect(c[0][0]).toBeCloseTo(perFoot * 647.25 * (1 - 647.25 / total), 15)
    expect(c[0][1]).toBe(0)
    expect(covariance!.get('A')).toEqual([[0, 0, 0], [0, 0, 0], [0, 0, 0]])
  })
})

describe('traverses that will not do', () => {
  const start = { station: 'A', point: [0, 0, 0] as const }
  const good: TraverseLeg[] = [{ from: 'A', to: 'B', length: 1, azimuth: 0 }, { from: 'B', to: 'C', length: 1, azimuth: 120 }, { from: 'C', to: 'A', length: 1, azimuth: 240 }]
  const with_ = (i: number, change: Partial<TraverseLeg>) => good.map((l, k) => k === i ? { ...l, ...change } : l)
  it.each([
    ['legs', []],
    ['legs[1].length', with_(1, { length: 0 })],
    ['legs[1].length', with_(1, { length: Number.NaN })],
    ['legs[2].azimuth', with_(2, { azimuth: 370 })],
    ['legs[2].azimuth', with_(2, { azimuth: Number.NaN })],
    ['legs[0].inclination', with_(0, { inclination: 95 })],
    ['legs[1].from', with_(1, { from: 'X' })],
    ['legs[1].to', with_(1, { to: 'B' })],
    ['legs[1].to', with_(1, { to: 'A' })],
    ['legs[2].to', with_(2, { to: 'Z' })],
  ])('%s', (field, legs) => {
    expect(() => traverse({ legs, start, rule: 'compass' })).toThrow(expect.objectContaining({ name: 'InputError', field }) as Error)
  })
  it('reports a loop that misses by metres', () => {
    const { misclosureLength, ratio } = traverse({ legs: with_(2, { length: 6 }), start, rule: 'compass' })
    expect(misclosureLength).toBeCloseTo(5, 9)
    expect(ratio).toBeCloseTo(8 / 5, 9)
  })
  it('a loop that closes exactly has no ratio', () => {
    const square: TraverseLeg[] = [{ from: 'A', to: 'B', length: 1, azimuth: 90 }, { from: 'B', to: 'C', length: 1, azimuth: 0 }]
    const { misclosure } = traverse({ legs: square, start, end: { station: 'C', point: [0, 0, 0] }, rule: 'compass' })
    const { ratio, misclosureLength } = traverse({ legs: square, start, end: { station: 'C', point: misclosure }, rule: 'compass' })
    expect([ratio, misclosureLength]).toEqual([null, 0])
  })
})
