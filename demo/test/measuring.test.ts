import type { Place } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { makeDemo, stated } from '../src/index.ts'
import { certified } from '../src/measure/assays.ts'
import { secondCompass, tools } from '../src/measure/tools.ts'
import { geographic } from '../src/truth/geographic.ts'
import { goldIn, panRecovery } from '../src/truth/grains.ts'
import { axesOf, azimuthOf, dot, inclinationOf, length, minus } from '../src/truth/vectors.ts'
import { deviation, entriesOf, mean, signed, textOf, valueOf } from './read-notes.ts'

const demos = Array.from({ length: 16 }, (_, i) => makeDemo(i + 1, { mistakes: false }))

/** Every shot beside the true line between its stations. */
const shots = demos.flatMap(demo => entriesOf(demo, 'shot').map((shot) => {
  const { stations, attraction, declination } = demo.truth, from = textOf(shot, 'from')!, to = textOf(shot, 'to')!
  const line = minus(stations.get(to)!.point, stations.get(from)!.point), low = textOf(shot, 'compass') === secondCompass ? tools.secondCompassLow : 0
  const needle = azimuthOf(line) - declination - low, back = valueOf(shot, 'backAzimuth')
  return {
    tape: valueOf(shot, 'distance')! - length(line), inclined: inclinationOf(line), clino: valueOf(shot, 'inclination')! - inclinationOf(line),
    fore: signed(valueOf(shot, 'azimuth')! - needle - attraction.get(from)!), back: back === undefined ? undefined : signed(back - needle - 180 - attraction.get(to)!),
  }
}))
const flat = shots.filter(shot => Math.abs(shot.inclined) < 35)
/** Readings are written to the half degree, which adds a twelfth of its square to their variance. */
const rounding = 0.5 / Math.sqrt(12)

describe('the survey', () => {
  it('errs as its compass does, forwards and back, without bias', () => {
    for (const errors of [flat.map(s => s.fore), flat.flatMap(s => s.back ?? [])]) {
      expect(errors.length).toBeGreaterThan(1400)
      expect(Math.abs(mean(errors))).toBeLessThan(0.06)
      expect(Math.abs(deviation(errors) / Math.hypot(tools.compass, rounding) - 1)).toBeLessThan(0.07)
    }
  })
  it('errs as its clinometer and its tape do', () => {
    expect(Math.abs(mean(shots.map(s => s.clino)))).toBeLessThan(0.05)
    expect(Math.abs(deviation(shots.map(s => s.clino)) / Math.hypot(tools.clinometer, rounding) - 1)).toBeLessThan(0.07)
    expect(Math.abs(mean(shots.map(s => s.tape)))).toBeLessThan(0.002)
    expect(deviation(shots.map(s => s.tape))).toBeGreaterThan(tools.tape)
    expect(deviation(shots.map(s => s.tape))).toBeLessThan(tools.tape + 10 * tools.tapeShare)
  })
  it('is tied by two fixes that are metres off', () => {
    const errors = demos.flatMap(demo => entriesOf(demo, 'tie').flatMap((tie) => {
      const place = tie.fields.place as Extract<Place, { by: 'gps' }>, true_ = geographic(demo.truth.stations.get(textOf(tie, 'station')!)!.point)
      return [(place.latitude - true_.latitude) * 111_000, (place.longitude - true_.longitude) * 84_500].map(error => error / place.accuracy!)
    }))
    expect(errors).toHaveLength(64)
    expect(Math.abs(deviation(errors) - 1)).toBeLessThan(0.3)
  })
})

describe('the readings', () => {
  it('scatter about the true plane by the stated degrees', () => {
    const off = demos.flatMap(demo => entriesOf(demo, 'structure').filter(s => textOf(s, 'feature') === 'fault').map((s) => {
      const strike = (valueOf(s, 'strike') ?? valueOf(s, 'dipDirection')! - 90) + demo.truth.declination
      return Math.acos(Math.abs(dot(axesOf({ strike, dip: valueOf(s, 'dip')! }).normal, demo.truth.fault.normal))) * 180 / Math.PI
    }))
    const rms = Math.sqrt(mean(off.map(angle => angle ** 2)))
    expect(off).toHaveLength(8 * demos.length)
    expect(Math.abs(rms / (tools.plane * Math.SQRT2) - 1)).toBeLessThan(0.2)
  })
  it('find the grooves at their true rake', () => {
    const rakes = demos.flatMap(demo => entriesOf(demo, 'structure').filter(s => textOf(s, 'feature') === 'striae').map(s => valueOf(s, 'rake')!))
    expect(Math.abs(mean(rakes) - stated.fault.rake)).toBeLessThan(1.5)
  })
  it('tape the vein square at its true width, and longer every other way', () => {
    const ratios = (direction: string) => demos.flatMap(demo => entriesOf(demo, 'width').filter(w => textOf(w, 'direction') === direction)
      .map(w => valueOf(w, 'measured')! / demo.truth.width(demo.truth.spots.get(w.id)!.vein!)))
    expect(mean(ratios('square to the vein'))).toBeCloseTo(1, 1)
    expect(mean(ratios('level across the heading'))).toBeGreaterThan(1.06)
    expect(mean(ratios('upright')) * Math.cos(stated.vein.dip * Math.PI / 180)).toBeCloseTo(1, 1)
  })
  it('place what lies in the vein where it is, where its coordinates say', () => {
    const off = demos.flatMap(({ truth }) => [...truth.spots.values()]
      .flatMap(({ point, vein }) => vein === undefined ? [] : [length(minus(truth.vein.at(vein), point))]))
    expect(off.length).toBeGreaterThan(200 * demos.length)
    expect(Math.max(...off)).toBeLessThan(0.05)
  })
})

describe('the gold', () => {
  const bags = demos.flatMap(demo => [...demo.truth.bags.values()].filter(bag => bag.vein !== undefined).map(bag => ({ demo, bag })))
  it('in the bags is what the ground carries, on the average', () => {
    const held = bags.reduce((sum, { bag }) => sum + goldIn(bag.grains), 0), due = bags.reduce((sum, { bag }) => sum + bag.grams * bag.grade * 1e-3, 0)
    expect(Math.abs(held / due - 1)).toBeLessThan(0.05)
  })
  it('in the pans is that, less what panning loses', () => {
    let found = 0, held = 0
    for (const { demo, bag } of bags) {
      const pan = entriesOf(demo, 'pan').find(p => textOf(p, 'bag') === bag.bag)!
      found += (valueOf(pan, 'goldMass') ?? 0.001) * 1000
      held += valueOf(pan, 'mass')! * bag.grade * 1e-3
    }
    expect(Math.abs(found / held / panRecovery - 1)).toBeLessThan(0.06)
  })
  it('in the assays is right on the average but erratic: far more so than in the pans', () => {
    const pairs = demos.flatMap(demo => entriesOf(demo, 'assay').flatMap((assay) => {
      const bag = demo.truth.bags.get(textOf(assay, 'bag')!.replace(/A$/, '')), gold = valueOf(assay, 'gold')
      return bag === undefined || gold === undefined ? [] : [{ gold, grade: bag.grade }]
    }))
    expect(pairs.length).toBeGreaterThan(450)
    expect(Math.abs(mean(pairs.map(p => p.gold)) / mean(pairs.map(p => p.grade)) - 1)).toBeLessThan(0.15)
    expect(deviation(pairs.map(p => Math.log(Math.max(p.gold, 0.05) / p.grade)))).toBeGreaterThan(0.4)
  })
  it('comes back from the standards as certified, and from blanks not at all', () => {
    const results = (name: string) => demos.flatMap((demo) => {
      const own = new Set(entriesOf(demo, 'sample').filter(s => textOf(s, 'standard') === name).map(s => textOf(s, 'bag')))
      return entriesOf(demo, 'assay').filter(a => own.has(textOf(a, 'bag'))).map(a => valueOf(a, 'gold') ?? 0)
    })
    for (const [name, { gold }] of Object.entries(certified)) expect(Math.abs(mean(results(name)) / gold - 1)).toBeLessThan(0.05)
    expect(Math.max(...results('barren quartz'))).toBeLessThan(0.2)
  })
  it('draws the detector: the signals on richer ground are stronger', () => {
    const correlations = demos.map((demo) => {
      const on = entriesOf(demo, 'target').flatMap((t) => {
        const vein = demo.truth.spots.get(t.id)?.vein
        return vein === undefined ? [] : [[t.fields.strength as number, Math.log(demo.truth.grade(vein))] as const]
      })
      const [s, g] = [on.map(p => p[0]), on.map(p => p[1])]
      return mean(on.map(([a, b]) => (a - mean(s)) * (b - mean(g)))) / deviation(s) / deviation(g)
    })
    expect(mean(correlations)).toBeGreaterThan(0.15)
  })
})
