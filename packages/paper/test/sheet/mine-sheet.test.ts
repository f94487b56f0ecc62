import type { Workings } from '@lodebook/answers'
import { createReckoner, planView, sectionView } from '@lodebook/answers'
import { describe, expect, it } from 'vitest'
import { nineSamples } from '../../../answers/test/small-book.ts'
import { mineSheet } from '../../src/sheet/index.ts'

const workings = createReckoner(nineSamples().book).answer('workings') as Workings
const words = { title: 'Test adit', date: '2026-05-03', surveyors: 'Ada', unit: 'm' as const }
const drawn = (scale: number, view = planView()) => mineSheet({ workings, view, ...words, scale }).svg
const station = (svg: string, name: string) => {
  const [, x, y] = new RegExp(`data-station="${name}" cx="([-\\d.]+)" cy="([-\\d.]+)"`).exec(svg)!
  return [Number(x), Number(y)] as const
}

describe('a sheet true to scale', () => {
  it('[TS1] a metre of the mine is 1000 / scale millimetres of paper, along and up alike', () => {
    for (const scale of [50, 100, 250]) {
      const svg = drawn(scale), [ax, ay] = station(svg, 'A1'), [bx, by] = station(svg, 'A3')
      expect(Math.hypot(bx - ax, by - ay)).toBeCloseTo(16 * 1000 / scale, 2) // two legs of 8 m
      expect(svg).toContain('width="297mm" height="210mm" viewBox="0 0 297 210"')
      const [, length, millimetres] = /data-length="([\d.]+)" data-unit="m" data-mm="([\d.]+)"/.exec(svg)!
      expect(Number(millimetres)).toBeCloseTo(Number(length) * 1000 / scale, 2)
    }
  })

  it('[TS2] north is up on a plan, and to the right on a section along 000', () => {
    const plan = drawn(100), section = drawn(100, sectionView(0))
    expect(station(plan, 'A3')[1]).toBeLessThan(station(plan, 'A1')[1])
    expect(station(plan, 'A3')[0]).toBeCloseTo(station(plan, 'A1')[0], 2)
    expect(station(section, 'A3')[0]).toBeGreaterThan(station(section, 'A1')[0])
  })

  it('[TS3] it says whose it is, the scale, who surveyed and when, the zero and the three norths, and never more than fits', () => {
    const svg = drawn(100)
    for (const said of ['Test adit', 'Scale 1 : 100', 'Surveyed 2026-05-03', 'by Ada', 'Zero of elevations: not said', '>M<', '>G, T<']) expect(svg).toContain(said)
    expect(mineSheet({ workings, view: planView(), ...words, scale: 20 }).whole).toBe(false)
    expect(mineSheet({ workings, view: planView(), ...words }).whole).toBe(true)
  })

  it('[TS4] names do not cover each other', () => {
    const boxes = [...drawn(500).matchAll(/class="name" x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)"[^>]*>([^<]+)</g)].map(([, x, y, size, text]) =>
      ({ x0: Number(x), x1: Number(x) + text!.length * 1.45, y0: Number(y) - Number(size), y1: Number(y) }))
    expect(boxes.length).toBeGreaterThan(1)
    boxes.forEach((a, i) => boxes.slice(i + 1).forEach(b => expect(a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1).toBe(false)))
  })
})
