import { describe, expect, it } from 'vitest'
import { structure } from '../../src/reckon/structure.ts'

const run = (name: string, input: unknown) => structure.find(r => r.name === name)!.run(input) as Record<string, number>

describe('structure at the prompt', () => {
  it.each(structure.map(r => [r.name, r] as const))('%s: its example runs', (_, { example, run }) => {
    expect(Object.keys(run(example) as object).length).toBeGreaterThan(0)
  })
  it('V: true-dip 002/40 with 135/30 is 333.9/60.7 (structural geology notebook)', () => {
    const { strike, dip } = run('true-dip', { apparent: [{ trend: 2, plunge: 40 }, { trend: 135, plunge: 30 }] })
    expect(strike).toBeCloseTo(333.9, 1)
    expect(dip).toBeCloseTo(60.7, 1)
  })
  it('V: true-thickness 467.2 m (Bennison et al. 2011)', () => {
    expect(run('true-thickness', { plane: { strike: 84.5, dip: 22.5 }, from: [1147, 3329, 400], to: [1323, 2362, 500] }).thickness).toBeCloseTo(467.2, 1)
  })
  it('plane-through gives the contract\'s fields', () => {
    const plane = run('plane-through', { points: [[0, 0, 0], [10, 0, -10], [0, 10, 0], [10, 10, -10]] })
    expect(plane.dip_direction).toBeCloseTo(90, 12)
    expect(plane.dip).toBeCloseTo(45, 12)
    expect(plane.rms).toBeLessThan(1e-14)
  })
  it('fault-offset: 5 m of strike slip moves an upright vein 5 m along an upright fault', () => {
    const vein = { strike: 0, dip: 90, point: [0, 0, 0] }
    const offset = run('fault-offset', { vein, fault: { strike: 90, dip: 60, point: [0, 10, 0] }, slip: [5, 0, 0] })
    expect(offset.separation_along_fault_strike).toBeCloseTo(5, 12)
    expect(offset.separation_down_fault_dip).toBeNull()
    expect(offset.continuation).toEqual({ strike: 0, dip: 90, point: [5, 0, 0] })
  })
  it.each([
    ['plane-through', { points: [[0, 0, 0], [1, 1, 1]] }, 'too few'],
    ['plane-through', { points: [[0, 0, 0], [1, 1, 1], [2, 2, 2]] }, 'collinear'],
    ['plane-through', { points: [[1, 1, 1], [1, 1, 1], [1, 1, 1]] }, 'coincident'],
    ['plane-intersection', { a: { strike: 10, dip: 50 }, b: { strike: 10, dip: 50 } }, 'parallel'],
    ['true-dip', { apparent: [{ trend: 10, plunge: 5 }, { trend: 10, plunge: 5 }] }, 'parallel'],
    ['direction-mean', { directions: [{ trend: 10, plunge: 5 }] }, 'too few'],
  ])('%s refuses %j: %s', (name, input, reason) => {
    expect(() => run(name, input)).toThrow(reason)
  })
})
