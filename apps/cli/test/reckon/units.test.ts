import { InputError } from '@lodebook/reckon'
import { describe, expect, it } from 'vitest'
import { ZodError } from 'zod'
import { units } from '../../src/reckon/units.ts'

const run = (input: unknown) => units.find(({ name }) => name === 'convert')?.run(input)

describe('reckon convert', () => {
  // V: 1 troy ounce 31.1034768 g; the rest are exact ratios of grains and pounds (checks/grade-and-pay.md section 1)
  it.each([
    [1, 'ozt/short ton', 'g/t', 240 / 7], [1, 'ozt/long ton', 'g/t', 1500 / 49], [1, 'dwt/short ton', 'g/t', 12 / 7], [34, 'ppb', 'g/t', 0.034],
    [1, 'ozt', 'g', 31.1034768], [180, 'deg', 'rad', Math.PI], [1, 'yd3', 'm3', 0.764554857984], [4.63, 'ft', 'm', 1.411224],
  ])('%f %s in %s', (value, from, to, expected) => expect(run({ value, from, to })).toEqual({ value: expected }))

  it('runs its own example', () => expect(units.map(({ run, example }) => run(example))).toEqual([{ value: 12 }]))

  it('refuses units of two kinds, unknown units, and fields it does not know', () => {
    expect(() => run({ value: 1, from: 'm', to: 'g/t' })).toThrow(InputError)
    expect(() => run({ value: 1, from: 'm', to: 'cubit' })).toThrow(InputError)
    expect(() => run({ value: 1, from: 'm', to: 'ft', digits: 3 })).toThrow(ZodError)
    expect(() => run({ value: '1', from: 'm', to: 'ft' })).toThrow(ZodError)
  })
})
