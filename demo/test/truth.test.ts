import type { Enu, VeinPoint } from '@lodebook/reckon'
import { declination, utm } from '@lodebook/reckon/survey'
import { describe, expect, it } from 'vitest'
import { random } from '../src/random.ts'
import { align, stated } from '../src/index.ts'
import { exposures } from '../src/truth/exposure.ts'
import { gaussianField } from '../src/truth/gaussian-field.ts'
import { geographic } from '../src/truth/geographic.ts'
import { drawGrains, goldIn, grainClasses, panRecovery } from '../src/truth/grains.ts'
import { makeOre } from '../src/truth/ore.ts'
import { sectionAt } from '../src/truth/section.ts'
import { length, minus } from '../src/truth/vectors.ts'
import { deviation, mean } from './read-notes.ts'

const seeds = Array.from({ length: 40 }, (_, i) => i + 1), ores = seeds.map(makeOre), [ore] = ores as [typeof ores[0]]
const rectangle = (a0: number, a1: number, d0: number, d1: number): VeinPoint[] =>
  [[a0, d0], [a1, d0], [a1, d1], [a0, d1]].map(([along, down]) => ({ along: along!, down: down! }))

describe('the correlated field', () => {
  const fields = Array.from({ length: 400 }, (_, i) => gaussianField(random(i, 'test'), { type: 'exponential', range: 5, ratio: 0.6, pitch: 30 }))
  const at = (p: VeinPoint) => fields.map(field => field(p)), origin = at({ along: 0, down: 0 })
  const correlation = (p: VeinPoint) => mean(at(p).map((v, i) => v * origin[i]!))

  it('has mean 0 and variance 1 over seeds', () => {
    expect(Math.abs(mean(origin))).toBeLessThan(0.15) // 3 standard errors of 1 / sqrt(400)
    expect(Math.abs(deviation(origin) - 1)).toBeLessThan(0.11) // 3 standard errors of 1 / sqrt(800)
  })
  it('falls off as exp(-h/a) along its pitch, and faster across it', () => {
    const along = { along: 5 * Math.cos(Math.PI / 6), down: 5 * Math.sin(Math.PI / 6) }
    const across = { along: -5 * Math.sin(Math.PI / 6), down: 5 * Math.cos(Math.PI / 6) }
    expect(Math.abs(correlation(along) - Math.exp(-1))).toBeLessThan(0.16)
    expect(Math.abs(correlation(across) - Math.exp(-1 / 0.6))).toBeLessThan(0.16)
    expect(Math.abs(correlation({ along: 60, down: -40 }))).toBeLessThan(0.16)
  })
})

describe('the vein', () => {
  it('is 0.2 to 0.6 m thick everywhere', () => {
    const widths = ores.flatMap(o => Array.from({ length: 40 }, (_, i) => o.width({ along: -44 + 2 * i, down: (i * 7) % 18 - 12 })))
    expect(Math.min(...widths)).toBeGreaterThanOrEqual(0.2)
    expect(Math.max(...widths)).toBeLessThanOrEqual(0.6)
    expect(mean(widths)).toBeCloseTo(0.4, 1)
  })
  it('carries a grade that is lognormal about its stated trend, far from the shoot', () => {
    const logs = ores.map(o => Math.log(o.accumulation({ along: 20, down: -20 })))
    expect(Math.abs(mean(logs) - Math.log(ore.median))).toBeLessThan(3 * ore.logDeviation / Math.sqrt(logs.length))
    expect(deviation(logs)).toBeGreaterThan(0.65 * ore.logDeviation)
    expect(deviation(logs)).toBeLessThan(1.35 * ore.logDeviation)
  })
  it('is richer in its shoot', () => {
    const ratios = ores.map(o => Math.log(o.accumulation(o.shoot.centre) / o.median))
    expect(mean(ratios)).toBeGreaterThan(Math.log(10) - 3 * ore.logDeviation / Math.sqrt(ratios.length))
  })
  it('keeps its coordinates on both sides of the fault: toVein undoes at', () => {
    for (const p of [{ along: -20, down: 3 }, { along: 26, down: -2 }, { along: 34, down: 1 }, { along: 50, down: -8 }]) {
      const back = ore.vein.toVein(ore.vein.at(p))
      expect(back.along).toBeCloseTo(p.along, 1) // the swell is read at a point a few centimetres aside
      expect(back.down).toBeCloseTo(p.down, 1)
      expect(Math.abs(back.off)).toBeLessThan(0.01)
    }
  })
  it('is moved by the whole slip beyond the fault and by nothing before it', () => {
    const near = { along: 10, down: 0 }, far = { along: 45, down: 0 }
    expect(length(minus(ore.vein.at(near), ore.vein.unfaulted(near)))).toBe(0)
    expect(length(minus(ore.vein.at(far), ore.vein.unfaulted(far)))).toBeCloseTo(ore.fault.netSlip, 9)
    expect(ores.every(o => o.fault.netSlip >= 5.5 && o.fault.netSlip <= 8.5)).toBe(true)
  })
  it('dips within a few degrees of its mean plane at any one place', () => {
    const dips = ores.flatMap(o => [-30, -10, 10].map(along => o.vein.attitude({ along, down: 0 }).dip))
    expect(mean(dips)).toBeCloseTo(stated.vein.dip, 0)
    expect(deviation(dips)).toBeLessThan(3)
  })
})

describe('the gold in the ground', () => {
  it('is the integral of the accumulation: random points give the same', () => {
    const box = rectangle(-40, -14, -12, 4), ground = ore.groundIn([box]), rng = random(9, 'points')
    const points = Array.from({ length: 8000 }, () => ({ along: rng.uniform(-40, -14), down: rng.uniform(-12, 4) }))
      .map(p => ore.gone(p) ? 0 : ore.accumulation(p))
    const ounces = mean(points) * 26 * 16 * stated.density / 31.1034768
    expect(Math.abs(ground.ounces / ounces - 1)).toBeLessThan(4 * deviation(points) / mean(points) / Math.sqrt(points.length))
  })
  it('adds up over neighbouring outlines, counts overlaps once, and leaves out what is stoped and what is past the fault', () => {
    const left = rectangle(-40, -20, -12, 4), right = rectangle(-20, 10, -12, 4), both = ore.groundIn([left, right])
    expect(both.ounces).toBeCloseTo(ore.groundIn([left]).ounces + ore.groundIn([right]).ounces, 9)
    expect(ore.groundIn([left, left]).ounces).toBe(ore.groundIn([left]).ounces)
    expect(ore.groundIn([ore.stope]).ounces).toBe(0)
    expect(ore.groundIn([ore.stope], { workedOut: true }).ounces).toBeGreaterThan(5)
    expect(ore.groundIn([rectangle(40, 50, -2, 2)]).ounces).toBe(0)
    expect(ore.groundIn([rectangle(40, 50, -2, 2)], { beyondFault: true }).ounces).toBeGreaterThan(0)
    expect(ore.groundIn([]).ounces).toBe(0)
  })
  it('leaves out what the headings took: a drift is about 1.7 m high, 1.9 m down the dip', () => {
    const strip = rectangle(-12, -2, -3, 3)
    const whole = ore.groundIn([strip], { workedOut: true, step: 0.1 }).area, left = ore.groundIn([strip], { step: 0.1 }).area
    expect(whole).toBeCloseTo(60, 9)
    expect(Math.abs((whole - left) / 10 - 1.7 / Math.sin(stated.vein.dip * Math.PI / 180))).toBeLessThan(0.1)
  })
  it('may be asked for by points of the ground', () => {
    const box = rectangle(-10, 10, -5, 2)
    expect(ore.groundUnder([box.map(p => ore.vein.unfaulted(p))]).ounces).toBeCloseTo(ore.groundIn([box]).ounces, 9)
  })
  it('may be asked for with other outlines taken away than the true ones', () => {
    const box = rectangle(-10, 10, -5, 2), hole = rectangle(0, 4, -3, 1), ground = (p: VeinPoint) => ore.vein.onPlane(p)
    expect(ore.groundIn([box], { taken: [hole] }).area).toBeCloseTo(140 - 16, 9)
    expect(ore.groundIn([box], { taken: [] }).area).toBeCloseTo(140, 9)
    expect(ore.groundUnder([box.map(ground)], { taken: [hole.map(ground)] }).ounces).toBeCloseTo(ore.groundIn([box], { taken: [hole] }).ounces, 9)
  })
})

describe('the grains', () => {
  it('share out all the metal, and weigh on the average what the grade says', () => {
    expect(grainClasses.reduce((sum, g) => sum + g.share, 0)).toBeCloseTo(1, 12)
    const rng = random(4, 'grains'), masses = Array.from({ length: 3000 }, () => goldIn(drawGrains(rng, 2000, 5)))
    const sigma = Math.sqrt(grainClasses.reduce((sum, g) => sum + 10 * g.share * g.mgEach, 0)) // Poisson: variance = sum of count times mass squared
    expect(Math.abs(mean(masses) - 10)).toBeLessThan(4 * sigma / Math.sqrt(masses.length))
    expect(Math.abs(deviation(masses) / sigma - 1)).toBeLessThan(0.06)
    expect(panRecovery).toBeCloseTo(0.7845, 12)
  })
})

describe('the workings', () => {
  it('reach the vein: every drift station up to the fault stands within half a metre of it', () => {
    for (const o of ores.slice(0, 10)) {
      for (const name of o.workings.filter(w => w.onVein).flatMap(w => w.stations.slice(1))) {
        const at = o.vein.toVein(o.stations.get(name)!.point)
        if (!o.fault.beyond(o.stations.get(name)!.point)) expect(Math.abs(at.off), name).toBeLessThan(0.5)
      }
    }
  })
  it('show the vein in their back or ribs just where it is', () => {
    for (const working of ore.workings.filter(w => w.onVein)) {
      for (let at = 0.5; at < working.path.length; at += 1.3) {
        for (const shown of exposures(ore.vein, sectionAt(ore.stations, working, at))) expect(Math.abs(ore.vein.toVein(shown.point).off)).toBeLessThan(1e-3)
      }
    }
  })
  it('lose the vein past the fault, where it lies metres to the right of the drift', () => {
    const last = ore.workings.find(w => w.name === 'Right drift')!.stations.at(-1)!
    expect(ore.vein.toVein(ore.stations.get(last)!.point).off).toBeLessThan(-2)
  })
  it('cut the same dyke on both sides of the fault', () => {
    const right = ore.workings.find(w => w.name === 'Right drift')!
    const inDyke = Array.from({ length: 370 }, (_, i) => right.path.at(i / 10).point).filter(p => Math.abs(ore.dyke.off(p)) < ore.dyke.thickness / 2)
    expect(inDyke.some(p => ore.fault.beyond(p))).toBe(true)
    expect(inDyke.some(p => !ore.fault.beyond(p))).toBe(true)
  })
})

describe('the frame', () => {
  it('has the declination that the World Magnetic Model gives for its place and season', () => {
    const model = declination({ latitude: stated.latitude, longitude: stated.longitude, height_m: stated.portal[2], date: '2026-07-15' })
    expect(Math.abs(stated.modelDeclination - model.declination)).toBeLessThan(0.01)
  })
  it('lies on the globe as transverse Mercator has it, its scale and convergence undone', () => {
    const origin = utm({ latitude: stated.latitude, longitude: stated.longitude }), point: Enu = [-60, 85, 0]
    const there = utm({ ...geographic(point), zone: origin.zone })
    const turn = origin.convergence * Math.PI / 180, e = (there.easting - origin.easting) / origin.scale, n = (there.northing - origin.northing) / origin.scale
    expect(e * Math.cos(turn) + n * Math.sin(turn)).toBeCloseTo(point[0], 2)
    expect(n * Math.cos(turn) - e * Math.sin(turn)).toBeCloseTo(point[1], 2)
  })
  it('is found again from a crew\'s map that is shifted and turned', () => {
    const turned = ([e, n, u]: Enu): Enu => [e * Math.cos(0.02) - n * Math.sin(0.02) + 3, e * Math.sin(0.02) + n * Math.cos(0.02) - 5, u + 2]
    const back = align([...ore.stations].map(([name, s]) => [name, turned(s.point)] as const), ore.stations)
    const p: Enu = [-44, 12, 1890]
    back(turned(p)).forEach((value, i) => { expect(value).toBeCloseTo(p[i]!, 9) })
  })
})
