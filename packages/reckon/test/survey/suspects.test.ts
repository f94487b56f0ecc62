import { describe, expect, it } from 'vitest'
import type { NetworkShot } from '../../src/survey/index.ts'
import { adjustNetwork, azimuthOf } from '../../src/survey/index.ts'
import { exactShot, inventWorkings, readShots } from './workings.ts'

const workings = inventWorkings(21, 30, 8, 0)
const ties = [{ station: 'A0', point: workings.points.get('A0')! }]
const blundered = (shots: readonly NetworkShot[], i: number, change: (s: NetworkShot) => Partial<NetworkShot>) =>
  shots.map((s, k) => k === i ? { ...s, ...change(s) } : s)

describe('data snooping', () => {
  const clean = readShots(workings, 5)
  const looped = 29 // the first closing leg

  it('names nothing in a survey without blunders', () => {
    expect(adjustNetwork({ shots: clean, ties }).suspects).toEqual([])
  })

  it.each([
    ['backAzimuth', 10, (s: NetworkShot) => ({ backAzimuth: azimuthOf(s.backAzimuth! + 10) })],
    ['azimuth', -10, (s: NetworkShot) => ({ azimuth: azimuthOf(s.azimuth! - 10) })],
    ['inclination', 8, (s: NetworkShot) => ({ inclination: s.inclination! + 8 })],
    ['backInclination', 8, (s: NetworkShot) => ({ backInclination: s.backInclination! + 8 })],
    ['distance', 1, (s: NetworkShot) => ({ distance: s.distance + 1 })],
  ] as const)('a blunder in %s of %d is named first, with its size and sign', (reading, size, change) => {
    const { suspects } = adjustNetwork({ shots: blundered(clean, looped, change), ties })
    expect(suspects[0]).toMatchObject({ shot: looped, reading })
    expect(Math.abs(suspects[0]!.blunder - size)).toBeLessThan(0.25 * Math.abs(size))
    expect(suspects.length).toBe(1)
  })

  it('names two blunders one after the other, and finds what leaving the first out gives', () => {
    const shots = blundered(blundered(clean, looped, s => ({ backAzimuth: azimuthOf(s.backAzimuth! + 12) })), 3, s => ({ azimuth: azimuthOf(s.azimuth! + 9) }))
    const both = adjustNetwork({ shots, ties })
    expect(both.suspects.map(s => [s.shot, s.reading])).toEqual([[looped, 'backAzimuth'], [3, 'azimuth']])
    // setting the first aside by a rank-one step gives the second the same w as adjusting anew without it
    const without = adjustNetwork({ shots: blundered(shots, looped, () => ({ leaveOut: ['backAzimuth'] })), ties })
    expect(without.suspects[0]).toMatchObject({ shot: 3, reading: 'azimuth' })
    expect(Math.abs(without.suspects[0]!.w - both.suspects[1]!.w)).toBeLessThan(0.05) // the geometry is no longer quite the same
    expect(without.readings.find(r => r.leftOut)!.residual).toBeCloseTo(both.suspects[0]!.blunder, 0)
  })

  it('says in words which shot disagrees and by how much', () => {
    const points = new Map([['A7', [0, 0, 0]], ['A8', [6, 9, 0.2]], ['A9', [15, 3, 0]]] as const)
    const legs = [['A7', 'A8'], ['A8', 'A9'], ['A9', 'A7']] as const
    const shots = legs.map(leg => exactShot(points, leg)).map((s, i) => i === 0 ? { ...s, backAzimuth: s.backAzimuth + 9.8 } : s)
    const { suspects } = adjustNetwork({ shots, ties: [{ station: 'A7', point: [0, 0, 0] }] })
    expect(suspects[0]).toMatchObject({ shot: 0, reading: 'backAzimuth', alternatives: [] })
    expect(suspects[0]!.says).toBe('foresight and backsight azimuth of A7-A8 disagree by 9.8°; most likely the backsight is 9.8° off')
  })

  it('says when it cannot tell the foresight from the backsight: on a spur nothing else checks them', () => {
    const shots: NetworkShot[] = [{ from: 'A7', to: 'A8', distance: 10, azimuth: 40, backAzimuth: 229.8, inclination: 0 }]
    const { suspects } = adjustNetwork({ shots, ties: [{ station: 'A7', point: [0, 0, 0] }] })
    expect(suspects.length).toBe(1)
    expect(suspects[0]!.alternatives.map(a => a.reading)).toEqual(['backAzimuth'])
    expect(suspects[0]!.says).toBe('foresight and backsight azimuth of A7-A8 disagree by 9.8°; nothing tells which of the two is off')
  })

  it('recognises a needle read at its other end and a lost sign', () => {
    const flip = adjustNetwork({ shots: blundered(clean, looped, s => ({ backAzimuth: s.azimuth })), ties })
    expect(flip.suspects[0]).toMatchObject({ shot: looped, reading: 'backAzimuth' })
    expect(flip.suspects[0]!.says).toContain('the other end of the needle')
    const steep = workings.legs.findIndex((leg, i) => i < 29 && Math.abs(exactShot(workings.points, leg).inclination) > 5)
    const sign = adjustNetwork({ shots: blundered(clean, steep, s => ({ backInclination: 0 - s.backInclination! })), ties })
    const named = sign.suspects.find(s => s.shot === steep)!
    expect(named.says).toContain('its sign')
  })

  it('still answers, and names it, where a lost decimal point leaves nothing to settle on', () => {
    const { suspects, converged, cautions, stations } = adjustNetwork({ shots: blundered(clean, looped, s => ({ distance: 10 * s.distance })), ties })
    expect(converged).toBe(false)
    expect(cautions[0]).toContain('too far off for least squares to settle')
    expect(suspects[0]).toMatchObject({ shot: looped, reading: 'distance' })
    expect(suspects[0]!.says).toMatch(/too long$/)
    expect(suspects[0]!.blunder / clean[looped]!.distance).toBeCloseTo(9, 1)
    for (const { point } of stations.values()) expect(point.every(Number.isFinite)).toBe(true)
  })

  it('names a tie that is off', () => {
    const far = workings.points.get('A29')!
    const result = adjustNetwork({ shots: clean, ties: [...ties, { station: 'A29', point: [far[0] + 30, far[1], far[2]], sigma: 3 }] })
    expect(result.suspects[0]).toMatchObject({ tie: 1, reading: 'east' })
    expect(Math.abs(result.suspects[0]!.blunder - 30)).toBeLessThan(5)
    expect(result.suspects[0]!.says).toMatch(/^east of the tie at A29 is (2|3)\d\.\d\d off/)
  })

  it('states the smallest blunder it would name: that one has w at the critical value plus 0.84', () => {
    const result = adjustNetwork({ shots: clean, ties })
    const reading = result.readings.find(r => r.shot === looped && r.reading === 'distance')!
    const exact = workings.legs.map(leg => exactShot(workings.points, leg))
    const shifted = blundered(exact, looped, s => ({ distance: s.distance + reading.detectable! }))
    const w = adjustNetwork({ shots: shifted, ties }).readings.find(r => r.shot === looped && r.reading === 'distance')!.w!
    const critical = w - 0.8416
    expect(critical).toBeGreaterThan(3.5) // about 180 readings at 5 % together: 0.0003 each, 3.6 (normal table)
    expect(critical).toBeLessThan(3.75)
    const namedAt = (size: number) => {
      const off = reading.detectable! * size / w
      return adjustNetwork({ shots: blundered(exact, looped, s => ({ distance: s.distance + off })), ties }).suspects.length
    }
    expect([namedAt(critical + 0.05), namedAt(critical - 0.05)]).toEqual([1, 0])
  })

  it('does not depend on the order of shots or which end is called from', () => {
    const shots = blundered(clean, looped, s => ({ backAzimuth: azimuthOf(s.backAzimuth! + 10) }))
    const turned = [...shots].reverse().map((s, i): NetworkShot => i % 2 ? s : {
      from: s.to, to: s.from, distance: s.distance, azimuth: s.backAzimuth, backAzimuth: s.azimuth,
      inclination: s.backInclination, backInclination: s.inclination,
    })
    const [one, other] = [adjustNetwork({ shots, ties }), adjustNetwork({ shots: turned, ties })]
    for (const [name, station] of one.stations) {
      station.point.forEach((x, i) => { expect(Math.abs(x - other.stations.get(name)!.point[i]!)).toBeLessThan(1e-6) })
      const scale = Math.max(...station.sigma) ** 2
      station.covariance.flat().forEach((c, i) => { expect(Math.abs(c - other.stations.get(name)!.covariance.flat()[i]!)).toBeLessThan(1e-6 * scale + 1e-12) })
    }
    expect(other.suspects[0]!.shot).toBe(shots.length - 1 - looped)
    expect(Math.abs(other.suspects[0]!.w)).toBeCloseTo(Math.abs(one.suspects[0]!.w), 4)
  })
})
