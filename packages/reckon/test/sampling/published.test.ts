import { describe, expect, it } from 'vitest'
import { grainMass, grainShape, grainSize, gyMass, massForError, massForGrains, mineralFactor, nuggetCount, panFactor, samplingError } from '../../src/sampling/index.ts'

// Status of each value: V read in the source, M from memory, R recomputed; 'own' cases have no published answer and guard against change.

describe('Gy\'s mass in four stages (Wills, Mineral Processing Technology, worked example)', () => {
  const m = mineralFactor(5 / 86.6, 7.5, 2.65)
  const mass = (sizeCm: number, relativeSd: number) =>
    gyMass({ sizeCm, liberationSizeCm: 0.015, mineralFactor: m, relativeSd, shape: 0.5, granulometric: 0.25 })
  // The published masses come out only if "2 % relative error" is the full width of the 95 % range and the mass is doubled for safety.
  it.each([[2.5, 1_369_632, 0.5], [0.5, 24_500.7, 0.05], [0.1, 438.28, 0.005], [0.004, 0.0724, 0.00005]])('V: %d cm: %d g, with 2 %% as a full width, doubled', (size, published, half) => {
    expect(Math.abs(2 * mass(size, 0.01 / 1.96) - published)).toBeLessThanOrEqual(half)
  })
  it('R: with 2 % as a half width the first mass is 342,408 g, exactly a quarter', () => {
    expect(2 * mass(2.5, 0.02 / 1.96)).toBeCloseTo(342_408, 0)
    expect(mass(2.5, 0.02 / 1.96) * 4).toBeCloseTo(mass(2.5, 0.01 / 1.96), 6)
  })
  it('R: masses go by the power 2.5 of size above liberation (55.90 for a factor five), 3 below', () => {
    expect(mass(2.5, 0.01) / mass(0.5, 0.01)).toBeCloseTo(55.90, 2)
    expect(mass(0.01, 0.01) / mass(0.005, 0.01)).toBeCloseTo(8, 10)
  })
})

describe('C d³/M', () => {
  // V: itrcweb.org ISM-1, link 18
  it('V: 0.2 cm, 15 %: C = 22.5 needs 8 g; C = 200,000 needs 71 kg (R 71.11)', () => {
    expect(massForError(22.5, 0.2, 0.15)).toBeCloseTo(8, 10)
    expect(massForError(2e5, 0.2, 0.15) / 1000).toBeCloseTo(71.11, 2)
  })
})

describe('gold form', () => {
  it.each([
    ['10 g/t, 0.05 cm, 1 cm, 5 kg', { gradeGPerT: 10, liberationSizeCm: 0.05, nominalSizeCm: 1, massG: 5000 }, 0.734, 0.0005],
    ['5 g/t, 0.1 cm, 1 cm, 3 kg', { gradeGPerT: 5, liberationSizeCm: 0.1, nominalSizeCm: 1, massG: 3000 }, 2.255, 0.0005],
    ['10 g/t, 0.01 cm, pulp of 0.0075 cm, 50 g', { gradeGPerT: 10, liberationSizeCm: 0.01, nominalSizeCm: 0.0075, massG: 50 }, 0.0451, 0.00005],
  ])('own (formula M): %s', (_, lot, relativeSd, half) => {
    expect(Math.abs(samplingError(lot).relativeSd - relativeSd)).toBeLessThanOrEqual(half)
  })
  it('the last is liberated: its factor is 1', () => {
    expect(samplingError({ gradeGPerT: 10, liberationSizeCm: 0.01, nominalSizeCm: 0.0075, massG: 50 }).liberationFactor).toBe(1)
  })
})

describe('grains in a sample', () => {
  it.each([[0.5, 0.60653, 1.414], [1, 0.36788, 1], [3, 0.04979, 0.577], [4.6052, 0.01000, 0.466], [20, 2.06e-9, 0.2236]])('R: %d expected: none %d, relative deviation %d', (lambda, none, sd) => {
    const count = nuggetCount({ massG: 1000, gradeGPerT: lambda, grainMg: 1 })
    expect(count.expected).toBeCloseTo(lambda, 12)
    expect(Math.abs(count.chanceOfNone / none - 1)).toBeLessThan(0.001)
    expect(Math.abs(count.relativeSd - sd)).toBeLessThan(0.0005)
  })
  it('M (rule), R: twenty grains give about +-50 % at 95 %: 2/sqrt(20) = 0.447 (Clifton et al., USGS PP 625-C)', () => {
    expect(2 * nuggetCount({ massG: massForGrains(20, { gradeGPerT: 8, grainMg: 0.4 }), gradeGPerT: 8, grainMg: 0.4 }).relativeSd).toBeCloseTo(0.447, 3)
  })
  it('own: 30 g at 5 g/t in balls of 0.25 mm (0.15790 mg): 0.950 expected, none in 0.387', () => {
    const grainMg = grainMass(0.25)
    expect(grainMg).toBeCloseTo(0.15790, 5)
    const count = nuggetCount({ massG: 30, gradeGPerT: 5, grainMg })
    expect(count.expected).toBeCloseTo(0.950, 3)
    expect(count.chanceOfNone).toBeCloseTo(0.387, 3)
  })
})

describe('grain mass and size', () => {
  it.each([[0.1, 0.0101], [0.25, 0.1579], [0.5, 1.263], [1, 10.106], [2, 80.84]])('R: a ball of %d mm weighs %d mg at 19.3', (size, mg) => {
    expect(Math.abs(grainMass(size) / mg - 1)).toBeLessThan(0.005)
    expect(grainSize(grainMass(size))).toBeCloseTo(size, 12)
  })
  it('R: a flake of 1 mm weighs 3.86 mg (shape 0.2) or 1.93 mg (0.1)', () => {
    expect(grainMass(1, grainShape.flake)).toBeCloseTo(3.86, 2)
    expect(grainMass(1, grainShape.thinFlake)).toBeCloseTo(1.93, 2)
  })
  // V counts: a Washington State survey handbook as reproduced at oroeminerali.altervista.org; R masses and sizes
  it.each([[12_000, 2.592, 0.635], [40_000, 0.7776, 0.425], [300_000, 0.10368, 0.217], [14e6, 0.0022217, 0.060]])('V count, R: %d colours an ounce are %d mg each, balls of %d mm', (count, mg, mm) => {
    const each = 31_103.4768 / count
    expect(Math.abs(each / mg - 1)).toBeLessThan(5e-4)
    expect(Math.abs(grainSize(each) - mm)).toBeLessThan(0.0006)
  })
})

describe('pan factor', () => {
  it('V volume (BLM Technical Bulletin 4, 16-inch pan, 336 in³), R: 138.9 loose pans a cubic yard, 166.6 to 173.6 a yard in place at 20 to 25 % swell', () => {
    const pan = 336 / 46_656
    expect(pan).toBeCloseTo(0.0072016, 7)
    expect(panFactor(pan, 0)).toBeCloseTo(138.9, 1)
    expect(Math.abs(panFactor(pan, 0.2) - 166.6)).toBeLessThan(0.1)
    expect(panFactor(pan, 0.25)).toBeCloseTo(173.6, 1)
  })
})
