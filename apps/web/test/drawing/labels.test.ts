import fc from 'fast-check'
import { expect, it } from 'vitest'
import { placeLabels } from '../../src/drawing/labels.ts'
import type { Wanted } from '../../src/drawing/labels.ts'

const wanted = (id: string, x: number, y: number, weight = 1): Wanted => ({ id, x, y, reach: 4, width: 30, height: 14, weight })
const many = fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 5 })), { maxLength: 60 })
  .map(all => all.map(([x, y, weight], i) => wanted(`s${i}`, x, y, weight)))

it('no label covers another or a mark, and none runs off the sheet', () => {
  fc.assert(fc.property(many, (marks) => {
    const placed = placeLabels(marks, 400, 300), boxes = placed.map(p => ({ x0: p.x, y0: p.y, x1: p.x + 30, y1: p.y + 14 }))
    boxes.forEach((a, i) => {
      expect(a.x0 >= 0 && a.y0 >= 0 && a.x1 <= 400 && a.y1 <= 300).toBe(true)
      for (const b of boxes.slice(i + 1)) expect(a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1).toBe(false)
      for (const m of marks) expect(a.x0 < m.x + 4 && m.x - 4 < a.x1 && a.y0 < m.y + 4 && m.y - 4 < a.y1).toBe(false)
    })
  }))
})

it('a lone mark has its label at the upper right; of two on one spot the weightier is named', () => {
  expect(placeLabels([wanted('A1', 100, 100)], 400, 300)).toEqual([{ id: 'A1', x: 105.6, y: 80.4 }])
  const crowd = Array.from({ length: 30 }, (_, i) => wanted(`t${i}`, 20, 20, i === 7 ? 9 : 1))
  expect(placeLabels(crowd, 80, 60)[0]?.id).toBe('t7')
  expect(placeLabels(crowd, 80, 60).length).toBeLessThan(5)
})
