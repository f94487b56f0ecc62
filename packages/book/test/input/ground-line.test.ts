import { groundMaterials } from '@lodebook/reckon/earthwork'
import { describe, expect, it } from 'vitest'
import { checkValue, input, kinds, readGroundLine } from '../../src/index.ts'

const now = Date.parse('2026-05-03T12:00:00Z')

describe('a ground line', () => {
  it.each<[string, string | undefined, [number, number][], string]>([
    ['0/0; 3/1.5; 6/0.2 m', undefined, [[0, 0], [3, 1.5], [6, 0.2]], '0/0; 3/1.5; 6/0.2 m'],
    ['0 0, 3 1.5, 6 -0.2', 'm', [[0, 0], [3, 1.5], [6, -0.2]], '0 0, 3 1.5, 6 -0.2 m'],
    ['0/0; 10/5 ft', 'm', [[0, 0], [3.048, 1.524]], '0/0; 10/5 ft'],
    ['0 m/0 m; 4\'2"/1 ft', 'm', [[0, 0], [1.27, 0.3048]], '0 m/0 m; 4\'2"/1 ft'],
  ])('%j, %s', (text, unit, line, kept) => {
    const read = readGroundLine(text, unit)
    expect(read).toEqual({ ok: true, value: { text: kept, line } })
    expect(readGroundLine(kept)).toEqual(read)
    expect(checkValue(kinds['section']!.fields['found']!, { text: kept, line }, 'found')).toBeUndefined()
  })
  it.each(['', '0/0', '0/0; 3', '0/0; 0/1 m', '3/0; 1/1 m', '0/0; 3/1', '0/0; x/1 m', '0/0; 3/1 kg', '0/0; 3/1/2 m', '0/0; 3 ft/1\'2"'])('refuses %j', (text) => {
    expect(readGroundLine(text)).toMatchObject({ ok: false })
  })
  it('whose points are not what its text says is refused', () => {
    expect(checkValue(kinds['section']!.fields['found']!, { text: '0/0; 3/1 m', line: [[0, 0], [3, 2]] }, 'found')).toMatchObject({ field: 'found.line' })
    expect(checkValue(kinds['section']!.fields['found']!, { text: '0/0; 3/1 m', line: [[0, 0]] }, 'found')).toMatchObject({ field: 'found.line' })
  })
  it('is written in the crew\'s unit at the prompt', () => {
    const { set, problems } = input('section', { job: 'Portal', at: '0', found: '0/0; 10/5', wanted: '0/0; 10/0' }, { now, units: { length: 'ft' } })
    expect(problems).toEqual([])
    expect(set['found']).toEqual({ text: '0/0; 10/5 ft', line: [[0, 0], [3.048, 1.524]] })
  })
})

it('a digging job takes every material whose swell is known, and no other', () => {
  const { is } = kinds['digging']!.fields['material']!
  expect(is.type === 'choice' && is.of).toEqual(groundMaterials.map(m => m.name))
})
