import { describe, expect, it } from 'vitest'
import { reckonings } from '../../src/reckon/index.ts'
import { prompt } from '../run.ts'

const run = prompt('/')
const reckon = (name: string, input: unknown) => run(['reckon', name], typeof input === 'string' ? input : JSON.stringify(input))

/** Runs bad input: it has to end with 2, say nothing on standard output, and one JSON object on standard error. */
async function refused(name: string, input: unknown): Promise<{ error: string, field: string, value: unknown, expected: string }> {
  const { code, out, err } = await reckon(name, input)
  expect([code, out]).toEqual([2, ''])
  expect(err.trimEnd().split('\n')).toHaveLength(1)
  const said = JSON.parse(err) as { error: string, field: string, value: unknown, expected: string }
  expect(Object.keys(said).sort()).toEqual(['error', 'expected', 'field', 'value'])
  for (const words of [said.error, said.expected]) expect(words).not.toMatch(/Invalid input|Invalid option|Too (?:big|small)|Unrecognized|received|undefined|<=|>=/)
  return said
}

/** Names that scripts outside rely on. */
const contract = ['traverse', 'network', 'declination', 'utm', 'utm-inverse', 'plane-through', 'true-dip', 'plane-intersection', 'true-thickness', 'direction-mean',
  'orientation-tensor', 'fault-offset', 'gas-check', 'natural-draught', 'airway', 'portal-exchange', 'clearing-time', 'section-volume', 'muck', 'convert', 'sampling-error',
  'nugget-count', 'screen-assay', 'pan-grade', 'lognormal-mean', 'duplicates', 'control-chart', 'compare-groups', 'variogram', 'fit-variogram', 'krige', 'cross-validate',
  'simulate', 'weighted-grade', 'present-value', 'hoskold', 'information-worth', 'date-spans']

describe('the list', () => {
  it('holds every name that scripts rely on, each once', async () => {
    const { code, out } = await run(['reckon', '--list'])
    const names = out.trimEnd().split('\n')
    expect(code).toBe(0)
    expect(new Set(names).size).toBe(names.length)
    expect(contract.filter(name => !names.includes(name))).toEqual([])
  })

  it('says what each does, as JSON', async () => {
    const list = JSON.parse((await run(['reckon', '--list', '--json'])).out) as { name: string, summary: string }[]
    expect(list).toHaveLength(reckonings.length)
    expect(list.filter(({ summary }) => summary.length < 10)).toEqual([])
  })
})

describe.each(reckonings.map(reckoning => [reckoning.name, reckoning] as const))('%s', (name, { example }) => {
  it('runs its example, and gives the same at the prompt', async () => {
    const shown = await run(['reckon', name, '--example'])
    expect(shown.code).toBe(0)
    const { input, output } = JSON.parse(shown.out) as { input: unknown, output: unknown }
    expect(input).toEqual(JSON.parse(JSON.stringify(example)))
    const ended = await reckon(name, input)
    expect([ended.code, ended.err]).toEqual([0, ''])
    expect(JSON.parse(ended.out)).toEqual(output)
    expect(ended.out).not.toContain('null')
  })

  it('does not change the input it is given', async () => {
    const frozen = deepFreeze(structuredClone(example))
    const { code } = await reckon(name, frozen)
    expect(code).toBe(0)
    expect(() => reckonings.find(one => one.name === name)!.run(frozen)).not.toThrow()
  })

  it('names a field that is missing, one that does not belong, and one of the wrong type', async () => {
    const fields = Object.entries(example as Record<string, unknown>)
    const needed = []
    for (const [field] of fields) {
      const without = Object.fromEntries(fields.filter(([other]) => other !== field))
      const ended = await reckon(name, without)
      if (ended.code === 0) continue
      const said = await refused(name, without)
      if (said.field === field) needed.push(field)
    }
    expect(needed.length).toBeGreaterThan(0)
    for (const field of needed) {
      const said = await refused(name, { ...example as object, [field]: true })
      expect(said).toMatchObject({ field, value: true })
      expect(said.error).toContain(field)
    }
    expect(await refused(name, { ...example as object, zzz: 1 })).toMatchObject({ field: 'zzz', value: 1 })
  })

  it('refuses what is no object', async () => {
    for (const input of [[], 3, 'null', '"text"']) expect((await refused(name, input)).field).toBe('input')
  })
})

describe('bad input', () => {
  const legs = [{ from: 'A', to: 'B', length: 10, azimuth: 20, inclination: 0 }, { from: 'B', to: 'A', length: 10, azimuth: 200, inclination: 0 }]
  const traverse = (change: object) => ({ legs: [legs[0], { ...legs[1], ...change }], start: { station: 'A', east: 0, north: 0, up: 0 }, rule: 'compass' })

  it('is named by its place in the input', async () => {
    expect(await refused('traverse', traverse({ length: 0 }))).toMatchObject({ field: 'legs[1].length', value: 0 })
    expect(await refused('traverse', traverse({ azimuth: 370 }))).toMatchObject({ field: 'legs[1].azimuth', value: 370 })
    expect(await refused('traverse', traverse({ azimuth: 'N 95 E' }))).toMatchObject({ field: 'legs[1].azimuth', value: 'N 95 E' })
    expect(await refused('traverse', traverse({ inclination: 95 }))).toMatchObject({ field: 'legs[1].inclination', value: 95 })
    expect(await refused('traverse', traverse({ to: 7 }))).toMatchObject({ field: 'legs[1].to', value: 7, expected: expect.stringContaining('text') as string })
    expect(await refused('traverse', { ...traverse({}), rule: 'compas' })).toMatchObject({ field: 'rule', value: 'compas', expected: 'one of "compass", "least-squares"' })
  })

  it('that is not JSON is named by the field it stands in', async () => {
    expect(await refused('convert', '{"value": NaN, "from": "m", "to": "ft"}')).toEqual({
      error: 'value: NaN will not do on line 1; expected a finite number', field: 'value', value: 'NaN', expected: 'a finite number',
    })
    expect(await refused('plane-through', '{"points": [[0, 0, 0],\n [1, 0, Infinity], [0, 1, 0]]}')).toMatchObject({ field: 'points[1][2]', value: 'Infinity' })
    expect(await refused('convert', '{"value": 1,5, "from": "m", "to": "ft"}')).toMatchObject({ field: 'input', value: '5' })
    expect(await refused('convert', '{"value": .5, "from": "m", "to": "ft"}')).toMatchObject({ field: 'value', value: '.5', expected: 'a number as JSON writes it, such as 0.5 or -12' })
    expect(await refused('convert', '{"value": 5, "from": "m"')).toMatchObject({ field: 'input', value: 'the end of the input' })
    expect(await refused('convert', '{"value": 5} {"value": 6}')).toMatchObject({ field: 'input', expected: 'nothing after the end of the JSON value' })
  })

  it('that is too large for a number is refused', async () => {
    expect(await refused('convert', '{"value": 1e999, "from": "m", "to": "ft"}')).toMatchObject({ field: 'value', value: 'Infinity' })
  })

  it('that is empty, or in another encoding, is refused', async () => {
    for (const empty of ['', ' \n']) expect(await refused('convert', empty)).toMatchObject({ field: 'input', value: null })
    const { code, out, err } = await run(['reckon', 'convert'], Uint8Array.from([0x7b, 0x22, 0xe9, 0x22]))
    expect([code, out]).toEqual([2, ''])
    expect(JSON.parse(err)).toMatchObject({ field: 'input', expected: 'JSON in UTF-8' })
  })

  it('of megabytes is not said back', async () => {
    const said = await refused('convert', { value: 'x'.repeat(10_000_000), from: 'm', to: 'ft' })
    expect(said.field).toBe('value')
    expect(JSON.stringify(said).length).toBeLessThan(500)
  })

  it('for a name that does not exist says which come near', async () => {
    expect(await refused('krig', {})).toMatchObject({ field: 'name', value: 'krig', expected: 'a calculation that exists, such as krige' })
    expect(await refused('zzz', {})).toMatchObject({ field: 'name', value: 'zzz' })
    const { code, err } = await run(['reckon'])
    expect(code).toBe(2)
    expect(JSON.parse(err)).toMatchObject({ field: 'name', value: null })
  })
})

describe('help', () => {
  it('says the exit codes, and lists the fields of a calculation', async () => {
    const { code, out } = await run(['reckon', '--help'])
    expect(code).toBe(0)
    expect(out).toContain('2  bad input; nothing was written')
    expect((await run(['reckon', 'traverse', '--fields'])).out).toMatch(/^legs {2,}a list/)
  })
})

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null) { Object.values(value).forEach(deepFreeze); Object.freeze(value) }
  return value
}
