import { createReckoner } from '@lodebook/answers'
import type { Workings } from '@lodebook/answers'
import { fold, input } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { utm } from '@lodebook/reckon/survey'
import { describe, expect, it } from 'vitest'
import { makeDemo } from '../src/make-demo.ts'
import { geographic } from '../src/truth/geographic.ts'

const seeds = Array.from({ length: 200 }, (_, i) => 1 + i)
/** 95 % of chi-square with two degrees of freedom (tables). */
const ellipse95 = 5.991464547

/** A true point in the crew's grid: metres from the crew's own fix at the portal, north true north. */
function inCrewsGrid(fix: string): (point: Enu) => readonly [number, number] {
  const place = input('tie', { station: 'A0', place: fix }, { now: 0 }).set['place'] as { latitude: number, longitude: number }
  const zero = utm(place), turn = zero.convergence * Math.PI / 180
  return (point) => {
    const at = utm({ ...geographic(point), zone: zero.zone })
    const e = (at.easting - zero.easting) / zero.scale, n = (at.northing - zero.northing) / zero.scale
    return [e * Math.cos(turn) + n * Math.sin(turn), n * Math.cos(turn) - e * Math.sin(turn)]
  }
}

function surveyed(seed: number, mistakes: boolean) {
  const demo = makeDemo(seed, { mistakes, samples: 9 })
  return { demo, workings: createReckoner(fold(demo.unsealed)).answer('workings') as Workings }
}

describe('the crew\'s survey of 200 invented mines, held against the truth', () => {
  it('[S1] true stations lie in their 95 % ellipses 93 to 97 % of the time', () => {
    let beside = 0, all = 0, ground = 0, grounded = 0
    for (const seed of seeds) {
      const { demo, workings } = surveyed(seed, false)
      const fix = demo.notes.find(n => n.draft.kind === 'tie')!.draft.set['place'] as unknown as { text?: string, latitude: number, longitude: number }
      const toGrid = inCrewsGrid(fix.text ?? `${fix.latitude}, ${fix.longitude}`), points = new Map(workings.stations.map(s => [s.name, s.point]))
      for (const { name, point, covariance, beside: near } of workings.stations) {
        const [e, n] = toGrid(demo.truth.stations.get(name)!.point)
        if (isInside(covariance, point[0] - e, point[1] - n)) ground++
        grounded++
        if (!near) continue
        const from = points.get(near.from)!, truth = demo.truth.stations.get(name)!.point, start = demo.truth.stations.get(near.from)!.point
        if (isInside(near.covariance, point[0] - from[0] - truth[0] + start[0], point[1] - from[1] - truth[1] + start[1])) beside++
        all++
      }
    }
    expect(all).toBeGreaterThan(200 * 60)
    // Underground, beside the portal: what readings do.
    expect(beside / all).toBeGreaterThan(0.93)
    expect(beside / all).toBeLessThan(0.97)
    // On the ground two GPS fixes a mine carry all its stations together: 200 draws of a share of 95 % scatter by 1.5 %, two of which are allowed.
    expect(ground / grounded).toBeGreaterThan(0.92)
    expect(ground / grounded).toBeLessThan(0.98)
  })

  it('[S2] the planted backsight blunder is named first in at least 95 % of them', () => {
    let named = 0, itself = 0
    for (const seed of seeds) {
      const { demo, workings } = surveyed(seed, true)
      const planted = demo.truth.mistakes.find(m => m.sort === 'backsight')!
      const [first] = [...workings.suspects].sort((a, b) => b.times - a.times)
      if (!first || first.entry !== planted.entries[0]) continue
      const said = first.reading === 'backAzimuth'
      if (said) itself++
      // Where nobody shot the leg again, foresight and backsight stand word against word: both are named together, and that nothing tells which.
      if (said || (first.reading === 'azimuth' && first.sentence.includes('nothing tells which') && first.others.some(o => o.entry === first.entry && o.reading === 'backAzimuth'))) named++
    }
    expect(named / seeds.length).toBeGreaterThanOrEqual(0.95)
    expect(itself / seeds.length).toBeGreaterThanOrEqual(0.92)
  })
})

/** Whether an error lies in the 95 % ellipse of a covariance. */
function isInside(covariance: readonly (readonly number[])[], de: number, dn: number): boolean {
  const [[ee, en], [, nn]] = covariance as readonly [readonly [number, number], readonly [number, number]]
  return (nn * de * de - 2 * en * de * dn + ee * dn * dn) / (ee * nn - en * en) <= ellipse95
}
