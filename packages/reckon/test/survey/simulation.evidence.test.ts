import { describe, expect, it } from 'vitest'
import { adjustNetwork, azimuthOf, handPrecision } from '../../src/survey/index.ts'
import { randomSource } from './random.ts'
import { inventWorkings, readShots } from './workings.ts'

const seeds = Array.from({ length: 200 }, (_, i) => i + 1)

/** 95 % of chi-square with 2 and with 3 degrees of freedom (tables). */
const [ellipse95, ellipsoid95] = [5.991464547, 7.814727903]

describe('over 200 seeded surveys of invented workings, 60 stations and 8 loops, read as well as stated', () => {
  // Stations of one survey err together, so that the share inside scatters more than 200 x 59 independent ones would.
  const surveys = seeds.map((seed) => {
    const workings = inventWorkings(seed, 60, 8)
    return { workings, result: adjustNetwork({ shots: readShots(workings, 5000 + seed), ties: [{ station: 'A0', point: workings.points.get('A0')! }] }) }
  })

  it('true stations lie in their 95 % ellipses 93 to 97 % of the time, in their ellipsoids too', () => {
    let [level, space, all] = [0, 0, 0]
    for (const { workings, result } of surveys) {
      for (const [name, { point, covariance: [[ee, en, eu], [, nn, nu], [,, uu]], held }] of result.stations) {
        if (held) continue
        const truth = workings.points.get(name)!
        const [e, n, u] = [0, 1, 2].map(i => point[i]! - truth[i]!) as [number, number, number]
        const plane = ee * nn - en * en
        if ((nn * e * e - 2 * en * e * n + ee * n * n) / plane <= ellipse95) level++
        const determinant = ee * (nn * uu - nu * nu) - en * (en * uu - nu * eu) + eu * (en * nu - nn * eu)
        const form = (nn * uu - nu * nu) * e * e + (ee * uu - eu * eu) * n * n + plane * u * u
          + 2 * ((eu * nu - en * uu) * e * n + (en * nu - nn * eu) * e * u + (en * eu - ee * nu) * n * u)
        if (form / determinant <= ellipsoid95) space++
        all++
      }
    }
    expect(all).toBe(200 * 59)
    for (const inside of [level / all, space / all]) {
      expect(inside).toBeGreaterThan(0.93)
      expect(inside).toBeLessThan(0.97)
    }
  })

  it('the global test is met as often as it should be: p under 5 % in about 5 % of surveys, variance factor about 1', () => {
    const rare = surveys.filter(({ result }) => result.test.p! < 0.05).length
    expect(rare).toBeGreaterThanOrEqual(3) // binomial, 200 at 5 %: 3 to 18 holds 99.5 %
    expect(rare).toBeLessThanOrEqual(18)
    const mean = surveys.reduce((sum, { result }) => sum + result.test.varianceFactor!, 0) / surveys.length
    expect(Math.abs(mean - 1)).toBeLessThan(0.02)
  })

  it('a reading is named without cause in about 5 % of surveys', () => {
    const alarms = surveys.filter(({ result }) => result.suspects.length > 0).length
    expect(alarms).toBeGreaterThanOrEqual(3)
    expect(alarms).toBeLessThanOrEqual(18)
  })

  it('w is standard normal where a reading is checked', () => {
    const w = surveys.flatMap(({ result }) => result.readings.filter(r => r.redundancy! > 0.05).map(r => r.w!))
    const mean = w.reduce((sum, x) => sum + x, 0) / w.length
    const variance = w.reduce((sum, x) => sum + (x - mean) ** 2, 0) / w.length
    expect(Math.abs(mean)).toBeLessThan(0.02)
    expect(Math.abs(variance - 1)).toBeLessThan(0.02)
  })
})

it('a backsight read 10° wrong on a shot of a loop is named first in at least 95 % of 200 surveys', () => {
  const named = seeds.filter((seed) => {
    const workings = inventWorkings(seed, 40, 6, 0)
    const shots = readShots(workings, 9000 + seed)
    const at = 39 + randomSource(seed).whole(6) // a closing leg
    const wrong = shots.map((s, i) => i === at ? { ...s, backAzimuth: azimuthOf(s.backAzimuth + (seed % 2 ? 10 : -10)) } : s)
    const [first] = adjustNetwork({ shots: wrong, ties: [{ station: 'A0', point: workings.points.get('A0')! }] }).suspects
    return first?.shot === at && first.reading === 'backAzimuth'
  }).length
  expect(named / seeds.length).toBeGreaterThanOrEqual(0.95)
})

it('a declination that is off by its own sigma is in the ellipses when the instruments say so', () => {
  let [inside, all] = [0, 0]
  for (const seed of seeds) {
    const workings = inventWorkings(seed, 30, 4)
    const off = randomSource(70000 + seed).normal() * 2
    const shots = readShots(workings, 7000 + seed, handPrecision).map(s => ({ ...s, azimuth: azimuthOf(s.azimuth + off), backAzimuth: azimuthOf(s.backAzimuth + off), instruments: 'compass' }))
    const { stations } = adjustNetwork({ shots, ties: [{ station: 'A0', point: workings.points.get('A0')! }], options: { instruments: { compass: { azimuth: 2 } } } })
    for (const [name, { point, covariance: [[ee, en], [, nn]], held }] of stations) {
      if (held) continue
      const truth = workings.points.get(name)!
      const [e, n] = [point[0] - truth[0], point[1] - truth[1]]
      if ((nn * e * e - 2 * en * e * n + ee * n * n) / (ee * nn - en * en) <= ellipse95) inside++
      all++
    }
  }
  expect(inside / all).toBeGreaterThan(0.92) // one declination error a survey: 200 draws carry most of it
  expect(inside / all).toBeLessThan(0.98)
})
