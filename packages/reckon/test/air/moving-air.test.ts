import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { airway, clearingTime, contaminantBuildUp, naturalDraught, portalExchange } from '../../src/air/index.ts'

describe('natural draught', () => {
  // V: Mine Ventilation Question Bank, question 1: 400 m, downcast 28 C, 750 mmHg, upcast 38 C
  const published = naturalDraught(400, 38, 28, 750 * 0.133322387415)
  // The source takes 0 C as 273 K and rounds the density: 0.01 m and 0.4 Pa.
  it('motive column 12.86 m', () => expect(Math.abs(published.motiveColumnM - 12.86)).toBeLessThan(0.01))
  it('146.2 Pa', () => expect(Math.abs(published.pressurePa - 146.2)).toBeLessThan(0.4))

  it('is the difference of the two columns\' weights, turns with the warmth, grows with height', () => {
    const weight = (celsius: number) => 99_992 / (287.04 * (celsius + 273.15)) * 9.80665 * 400
    expect(naturalDraught(400, 38, 28, 99.992).pressurePa).toBeCloseTo(weight(28) - weight(38), 9)
    expect(naturalDraught(400, 28, 38, 99.992).pressurePa).toBeCloseTo(weight(38) - weight(28), 9)
    expect(naturalDraught(400, 28, 38, 99.992).direction).toBe('reversed')
    expect(naturalDraught(800, 38, 28, 99.992).pressurePa).toBeCloseTo(2 * naturalDraught(400, 38, 28, 99.992).pressurePa, 9)
    expect(naturalDraught(30, 10, 10, 90)).toMatchObject({ pressurePa: 0, motiveColumnM: 0, direction: 'none' })
  })

  it.each([[[0, 10, 5, 90], /height_m/], [[30, 75, 5, 90], /upcast_C.*23\.9/], [[30, 10, NaN, 90], /downcast_C/], [[30, 10, 5, 900], /pressure_kPa.*90 \(hPa\)/],
    [[30, 10, 5, 750], /100\.0 \(mmHg\)/], [[30, 10, 5, 29.5], /99\.9 \(inHg\)/]] as const)('refuses %j', ([height, up, down, pressure], message) => {
    expect(() => naturalDraught(height, up, down, pressure)).toThrow(InputError)
    expect(() => naturalDraught(height, up, down, pressure)).toThrow(message)
  })
})

describe('airway', () => {
  const adit = { lengthM: 100, areaM2: 3, perimeterM: 7, frictionKgM3: 0.012 }

  // V: Mine Ventilation Question Bank, question 2: 3 x 3 m at 10 mm w.g., widened to 3 x 4 m: printed 5 mm, exactly 4.92
  it('widening 3 x 3 m to 3 x 4 m brings 10 mm of water down to 5', () => {
    const square = airway({ ...adit, areaM2: 9, perimeterM: 12, flowM3S: 10 })
    const wide = airway({ ...adit, areaM2: 12, perimeterM: 14, flowM3S: 10 })
    const millimetres = 10 * (wide.pressurePa ?? NaN) / (square.pressurePa ?? NaN)
    expect(millimetres).toBeCloseTo(4.92, 2)
    expect(Math.round(millimetres)).toBe(5)
  })

  // R: checks/physical.md section 3.3
  it('1.5 x 2.0 m, 100 m, k 0.012: 0.3111 N s2/m8, 5 Pa drives 4.01 m3/s', () => {
    expect(airway(adit).resistance).toBeCloseTo(0.3111, 4)
    expect(Math.sqrt(5 / airway(adit).resistance)).toBeCloseTo(4.01, 2)
    expect(airway({ ...adit, flowM3S: 4.01 }).pressurePa).toBeCloseTo(5, 1)
  })

  it('the equivalent length resists as the shocks do', () => {
    const { equivalentLengthM, shockResistance, resistance, frictionResistance } = airway({ ...adit, shock: 1.5, densityKgM3: 1.05 })
    expect(airway({ ...adit, lengthM: equivalentLengthM, densityKgM3: 1.05 }).frictionResistance).toBeCloseTo(shockResistance, 12)
    expect(resistance).toBeCloseTo(shockResistance + frictionResistance, 15)
    expect(shockResistance).toBeCloseTo(1.5 * 1.05 / 18, 12)
    expect(equivalentLengthM).toBeCloseTo(1.5 * 1.2 * 3 / (2 * 0.012 * 7), 10)
  })

  it('pressure goes with the square of the flow and keeps its sign', () => {
    const at = (flowM3S: number) => airway({ ...adit, flowM3S }).pressurePa ?? NaN
    expect(at(6)).toBeCloseTo(4 * at(3), 12)
    expect(at(-3)).toBeCloseTo(-at(3), 12)
    expect(at(0)).toBe(0)
    expect(airway(adit).pressurePa).toBeUndefined()
  })

  it.each([[{ lengthM: 0 }, /length_m/], [{ areaM2: -1 }, /area_m2/], [{ perimeterM: 4 }, /perimeter_m.*6\.14/], [{ frictionKgM3: NaN }, /friction/], [{ shock: -1 }, /shock/], [{ flowM3S: Infinity }, /flow/]])(
    'refuses %j', (part, message) => expect(() => airway({ ...adit, ...part })).toThrow(message))
})

describe('portal exchange', () => {
  // R from the formula read (V) in the LBNL Modelica Buildings library after Brown & Solvason 1962; W 1.5, H 2.0, mean 285 K
  const mean = 285 - 273.15
  it.each([[2, 0.6, 0.223], [2, 0.65, 0.241], [5, 0.6, 0.352], [5, 0.65, 0.381], [10, 0.6, 0.498], [10, 0.65, 0.539]])('%f degrees, Cd %f: %f m3/s', (difference, discharge, flow) => {
    expect(portalExchange(1.5, 2, mean + difference / 2, mean - difference / 2, discharge).flowM3S).toBeCloseTo(flow, 3)
  })

  // M: Linden 1999, Q = k A sqrt(g' H) with k about 0.2
  it('is k A sqrt(g\' H) with k = Cd / 3', () => {
    const reduced = 9.80665 * 4 / 285
    expect(portalExchange(1, 1, mean + 2, mean - 2, 0.6).flowM3S).toBeCloseTo(0.2 * Math.sqrt(reduced), 12)
  })

  it('four times the difference trades twice the air, a portal four times as high eight times', () => {
    const flow = (height: number, difference: number) => portalExchange(1.5, height, mean + difference / 2, mean - difference / 2).flowM3S
    expect(flow(2, 8) / flow(2, 2)).toBeCloseTo(2, 10)
    expect(flow(8, 3) / flow(2, 3)).toBeCloseTo(8, 10)
    expect(flow(2, 0)).toBe(0)
  })

  it('warm air leaves along the back', () => {
    expect(portalExchange(1.5, 2, 12, 2).directionTop).toBe('out')
    expect(portalExchange(1.5, 2, 9, 25).directionTop).toBe('in')
    expect(portalExchange(1.5, 2, 9, 9).directionTop).toBe('none')
  })

  it.each([[[0, 2, 9, 5, 0.6], /width_m/], [[1, NaN, 9, 5, 0.6], /height_m/], [[1, 2, 99, 5, 0.6], /inside_C/], [[1, 2, 9, -300, 0.6], /outside_C/], [[1, 2, 9, 5, 6], /discharge/]] as const)(
    'refuses %j', ([width, height, inside, outside, discharge], field) => expect(() => portalExchange(width, height, inside, outside, discharge)).toThrow(field))
})

describe('clearing time', () => {
  // V: tracer in a room of 20 m3, 9.9 m3/h (jayjock-associates.blogspot.com, July 2013): 16 ppm at first, then 12.5, 9.7, 7.9, 4.1
  it.each([[12.5, 0.5], [9.7, 1], [7.9, 1.4], [4.1, 2.8]])('to %f ppm in %f hours, within reading error of 0.05 h', (to, hours) => {
    expect(Math.abs(clearingTime(20, 9.9 / 3600, 16, to).minutes / 60 - hours)).toBeLessThan(0.05)
  })

  // R: checks/physical.md section 3.6
  it('120 m3, 0.2 m3/s, 400 to 25 ppm: 27.7 minutes', () => expect(clearingTime(120, 0.2, 400, 25).minutes).toBeCloseTo(27.7, 1))

  it('times add up, and nothing to thin takes no time', () => {
    const minutes = (from: number, to: number) => clearingTime(50, 0.1, from, to).minutes
    expect(minutes(400, 100) + minutes(100, 25)).toBeCloseTo(minutes(400, 25), 10)
    expect(minutes(25, 25)).toBe(0)
  })

  it('says to wait and to read', () => expect(clearingTime(1, 1, 2, 1).cautions.join(' ')).toMatch(/reading that passes, both.*15 minutes/))

  it.each([[[0, 1, 2, 1], /volume_m3/], [[1, 0, 2, 1], /flow_m3_s/], [[1, 1, 1, 2], /to/], [[1, 1, 2, 0], /to/], [[1, 1, NaN, 1], /from/]] as const)(
    'refuses %j', ([volume, flow, from, to], field) => expect(() => clearingTime(volume, flow, from, to)).toThrow(field))
})

describe('build-up', () => {
  // V: engineeringtoolbox.com, room pollution concentration, q = V = 1: changes an hour, minutes, share
  it.each([[1, 10, 0.1535], [4, 20, 0.1841], [0.5, 40, 0.5669], [2, 80, 0.4653], [8, 10, 0.0921], [16, 20, 0.0622], [0.5, 160, 1.4728], [1, 160, 0.9305]])(
    '%f an hour, %f min: %f', (changes, minutes, share) => expect(contaminantBuildUp(1, 1, changes, minutes / 60)).toBeCloseTo(share, 4))

  it('without fresh air grows in proportion, with it levels off at source over flow', () => {
    expect(contaminantBuildUp(0.3, 20, 0, 2)).toBeCloseTo(0.03, 14)
    expect(contaminantBuildUp(0.3, 20, 1e-12, 2)).toBeCloseTo(0.03, 12)
    expect(contaminantBuildUp(0.3, 20, 5, 1000)).toBeCloseTo(0.3 / 100, 14)
    expect(() => contaminantBuildUp(-1, 1, 1, 1)).toThrow(/source/)
  })
})
