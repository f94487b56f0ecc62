import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { gasCheck, gasLimits, gases, gasNames, type GasReadings } from '../../src/air/index.ts'

const found = (readings: GasReadings) => gasCheck(readings).findings.map(({ gas, kind, limit }) => `${gas} ${kind} ${limit}`)
const good: GasReadings = { O2: 20.9, CO: 0, CO2: 450, CH4: 0, H2S: 0, NO2: 0 }

describe('limits as published', () => {
  // Figures with their sources and statuses: checks/physical.md section 3.1 (V unless marked)
  it.each([
    ['O2', 'minimum', [19.5]], ['O2', 'maximum', [22]], ['CO', 'shift average', [25, 35, 50]], ['CO', 'ceiling', [200]], ['CO', 'immediate danger', [1200]],
    ['CO2', 'shift average', [5000]], ['CO2', 'short-term', [30_000]], ['CO2', 'immediate danger', [40_000]], ['CH4', 'act', [0.5]], ['CH4', 'withdraw', [1]], ['CH4', 'explosive', [5]],
    ['H2S', 'ceiling', [20, 50]], ['H2S', 'shift average', [1, 10]], ['H2S', 'immediate danger', [100]], ['NO2', 'short-term', [1]], ['NO2', 'ceiling', [5]],
    ['NO2', 'immediate danger', [13, 20]], // 13 M, 20 V (1994)
    ['CO', 'explosive', [125_000]], ['H2S', 'explosive', [43_000]],
  ])('%s %s: %j', (gas, kind, limits) => expect(gasLimits.filter(limit => limit.gas === gas && limit.kind === kind).map(({ limit }) => limit).sort((a, b) => a - b)).toEqual(limits))

  it('methane\'s 1 % is 20 % of its lower explosive limit of 5 % (29 CFR 1926.800(j)(1)(ix)(B), V)', () => {
    const limit = (kind: string) => gasLimits.find(row => row.gas === 'CH4' && row.kind === kind)?.limit ?? NaN
    expect(limit('withdraw') / limit('explosive')).toBe(0.2)
  })

  it('each row says where it was read and how well', () => {
    for (const limit of gasLimits) {
      expect(limit.source).not.toBe('')
      expect(limit.section).not.toBe('')
      expect(['V', 'V-part', 'V-secondary', 'M']).toContain(limit.status)
      if (limit.source.includes('memory')) expect(limit.status).toBe('M')
    }
  })
})

describe('gas check', () => {
  it('is silent on limits for open air, says so without leave to go in, and never says the word', () => {
    const check = gasCheck(good)
    expect(check).toMatchObject({ findings: [], notRead: [], doubts: [] })
    expect(check.cautions[0]).toContain('not leave to go in')
    expect(JSON.stringify([check, gasLimits, gasCheck({ O2: 5, CO: 5000, CH4: 6, H2S: 200, NO2: 30, CO2: 80_000 })])).not.toMatch(/\bsafe/i)
  })

  it('keeps to the edge: 19.5 % oxygen and 50 ppm monoxide are within, 0.5 % methane is not', () => {
    expect(found({ O2: 19.5 })).toEqual([])
    expect(found({ O2: 19.49 })).toEqual(['O2 minimum 19.5'])
    expect(found({ O2: 22 })).toEqual([])
    expect(found({ CO: 50 })).toEqual(['CO shift average 25', 'CO shift average 35'])
    expect(found({ CH4: 0.5 })).toEqual(['CH4 act 0.5'])
    expect(found({ CH4: 0.49 })).toEqual([])
  })

  it('puts the worst first across gases', () => {
    expect(found({ O2: 18.9, CO: 240, CO2: 9000 })).toEqual(['CO ceiling 200', 'O2 minimum 19.5', 'CO shift average 25', 'CO shift average 35', 'CO shift average 50', 'CO2 shift average 5000'])
    expect(found({ O2: 14, CO: 210 })[0]).toBe('O2 effect 15')
    expect(found({ CH4: 5, CO: 60 })[0]).toBe('CH4 explosive 5')
    expect(found({ CO: 1300 }).slice(0, 2)).toEqual(['CO effect 800', 'CO immediate danger 1200'])
    expect(found({ H2S: 120 })[0]).toBe('H2S immediate danger 100')
  })

  it('gives only the gravest effect of a gas', () => {
    expect(found({ O2: 0 })).toEqual(['O2 effect 6', 'O2 minimum 19.5'])
    expect(found({ CO: 4000 }).filter(text => text.includes('effect'))).toEqual(['CO effect 3200'])
  })

  it('lists what was not read', () => {
    expect(gasCheck({ O2: 20.9 }).notRead).toEqual(['CO', 'CO2', 'CH4', 'H2S', 'NO2'])
    expect(gasCheck({}).notRead).toEqual(gasNames)
    expect(gasCheck({ O2: 20.9 }).cautions.join(' ')).toContain('Not read: carbon monoxide')
  })

  it('every finding names value, limit, unit, rule, section, kind and what to do', () => {
    for (const finding of gasCheck({ O2: 12, CO: 2000, CO2: 50_000, CH4: 2, H2S: 60, NO2: 6 }).findings) {
      expect(finding.unit).toBe(gases[finding.gas].unit)
      for (const text of [finding.rule, finding.section, finding.kind, finding.action, finding.says]) expect(text).not.toBe('')
    }
  })

  it('a worse reading never shortens the list of rules broken nor eases the worst of them', () => {
    const order = ['shift average', 'act', 'short-term', 'maximum', 'withdraw', 'minimum', 'ceiling', 'immediate danger', 'explosive', 'effect']
    fc.assert(fc.property(fc.constantFrom('CO', 'CO2', 'H2S', 'NO2'), fc.integer({ min: 0, max: 400_000 }), fc.integer({ min: 0, max: 400_000 }), (gas, a, b) => {
      const [less, more] = [Math.min(a, b), Math.max(a, b)].map(value => gasCheck({ [gas]: value }).findings)
      const rules = (list = less) => list?.filter(({ kind }) => kind !== 'effect').length ?? 0
      expect(rules(more)).toBeGreaterThanOrEqual(rules(less))
      const first = (list = less) => order.indexOf(list?.[0]?.kind ?? '')
      if (first(less) >= 7) expect(first(more)).toBeGreaterThanOrEqual(7)
    }), { seed: 101, numRuns: 500 })
  })

  it('does not change what it is given', () => expect(gasCheck(Object.freeze({ O2: 18 })).findings).toHaveLength(1))
})

describe('slips', () => {
  it.each<[GasReadings, RegExp]>([
    [{ O2: 209 }, /readings\.o2_pct: 209 .*did you mean 20\.9\?/], [{ O2: 209_000 }, /did you mean 20\.9\?/], [{ O2: 2090 }, /did you mean 20\.9\?/], [{ CH4: 5000 }, /did you mean 0\.5\?/],
    [{ O2: -0.1 }, /zero set in open air/], [{ CO: -3 }, /readings\.co_ppm/], [{ CO: 2e6 }, /parts per million/], [{ H2S: NaN }, /readings\.h2s_ppm/], [{ O2: Infinity }, /o2_pct/],
    [{ O2: 90, CH4: 20 }, /come to 110/],
  ])('%j is refused', (readings, message) => {
    expect(() => gasCheck(readings)).toThrow(InputError)
    expect(() => gasCheck(readings)).toThrow(message)
  })

  it.each<[GasReadings, string]>([
    [{ O2: 0.209 }, 'it is 20.9 %'], [{ CO: 20.9 }, 'wrong column'], [{ O2: 21.5 }, 'More than open air'], [{ CO2: 0.5 }, 'it is 5000 ppm'], [{ CO2: 100 }, 'Less than open air'],
    [{ CH4: 20 }, 'it is 1 % methane'], [{ O2: 20.9, CO2: 60_000 }, 'would leave at most 19.6 %'],
  ])('%j stands, with a question', (readings, question) => expect(gasCheck(readings).doubts.map(doubt => doubt.question).join(' ')).toContain(question))

  it('a low share still counts as it is written', () => expect(found({ O2: 0.209 })[0]).toBe('O2 effect 6'))
  it('asks nothing of readings in order', () => expect(gasCheck({ ...good, O2: 20.8, CO: 21 }).doubts).toEqual([]))
})
