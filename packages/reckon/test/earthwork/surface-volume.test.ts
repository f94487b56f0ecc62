import Delaunator from 'delaunator'
import { describe, expect, it } from 'vitest'
import type { Enu } from '../../src/core/index.ts'
import { DegenerateError, drawsFrom, InputError } from '../../src/core/index.ts'
import { surfaceVolume } from '../../src/earthwork/index.ts'

const square = (size: number, up: number): Enu[] => [[0, 0, up], [size, 0, up], [size, size, up], [0, size, up]]

/** Random spots over a square, with its corners, so that two such surfaces cover the same ground. */
function scatter(seed: number, n: number, height: (e: number, n: number) => number, size = 10): Enu[] {
  const draws = drawsFrom(seed)
  const inner = Array.from({ length: n }, () => [draws.uniform() * size, draws.uniform() * size] as const)
  return [[0, 0], [size, 0], [size, size], [0, size], ...inner].map(([e = 0, u = 0]): Enu => [e, u, height(e, u)])
}

describe('volume between two triangulated surfaces, closed forms', () => {
  it('a slab', () => { expect(surfaceVolume(square(10, 3), square(10, 1))).toMatchObject({ cut: 200, fill: 0, area: 100 }) })
  it('a pyramid over a level floor: base x height / 3', () => {
    const { cut, fill } = surfaceVolume([...square(6, 0), [3, 3, 5]], 0)
    expect(cut).toBeCloseTo(36 * 5 / 3, 10)
    expect(fill).toBe(0)
  })
  it('a pyramid into the ground is fill', () => { expect(surfaceVolume([...square(6, 0), [3, 3, -5]], 0).fill).toBeCloseTo(60, 10) })
  it('a tilted plane through a level floor: two equal wedges', () => {
    const tilted: Enu[] = [[0, 0, -2], [10, 0, 2], [10, 10, 2], [0, 10, -2]]
    const { cut, fill } = surfaceVolume(tilted, 0)
    expect([cut, fill].map(v => v.toFixed(9))).toEqual(['50.000000000', '50.000000000']) // each 1/2 x 5 x 2 x 10
  })
  it('a frustum of a cone from rings of spots comes to h (A0 + sqrt(A0 A1) + A1) / 3 of its polygons', () => {
    const ring = (r: number, up: number): Enu[] => Array.from({ length: 96 }, (_, i) => [r * Math.cos(i * Math.PI / 48), r * Math.sin(i * Math.PI / 48), up])
    const polygon = (r: number) => 96 / 2 * r * r * Math.sin(Math.PI / 48)
    const [a0, a1] = [polygon(5), polygon(2)]
    expect(surfaceVolume([...ring(5, 0), ...ring(2, 3), [0, 0, 3]], 0).cut).toBeCloseTo(3 * (a0 + Math.sqrt(a0 * a1) + a1) / 3, 9)
  })
  it('surfaces that only partly lie over each other count where both are known', () => {
    const moved = square(10, 0).map(([e, n, u]): Enu => [e + 6, n, u])
    expect(surfaceVolume(square(10, 2), moved)).toMatchObject({ cut: expect.closeTo(80, 9) as number, area: expect.closeTo(40, 9) as number })
    expect(surfaceVolume(square(10, 2), square(10, 0).map(([e, n, u]): Enu => [e + 20, n, u]))).toEqual({ cut: 0, fill: 0, area: 0 })
  })
})

describe('volume between two triangulated surfaces', () => {
  const hill = (e: number, n: number) => 3 * Math.exp(-((e - 4) ** 2 + (n - 5) ** 2) / 8), slope = (e: number, n: number) => 0.5 + 0.12 * e - 0.05 * n

  /** Height of a triangulated surface over a point, found by trying every triangle. */
  function heightOn(points: readonly Enu[], x: number, y: number): number {
    const { triangles } = Delaunator.from(points.map(([e, n]) => [e, n]))
    for (let i = 0; i < triangles.length; i += 3) {
      const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = [points[triangles[i]!]!, points[triangles[i + 1]!]!, points[triangles[i + 2]!]!]
      const whole = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
      const s = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / whole, t = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / whole
      if (s >= -1e-12 && t >= -1e-12 && s + t <= 1 + 1e-12) return az + s * (bz - az) + t * (cz - az)
    }
    throw new Error(`no triangle holds ${x}, ${y}`)
  }
  it('agrees with a fine grid over two curved surfaces of spots (brute force)', () => {
    const found = scatter(21, 12, hill), wanted = scatter(22, 9, slope), n = 120
    let cut = 0, fill = 0
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) {
      const [x, y] = [(i + 0.5) * 10 / n, (j + 0.5) * 10 / n], above = heightOn(found, x, y) - heightOn(wanted, x, y)
      if (above > 0) cut += above * (10 / n) ** 2
      else fill -= above * (10 / n) ** 2
    }
    const made = surfaceVolume(found, wanted)
    expect(made.cut / cut).toBeCloseTo(1, 2)
    expect(made.fill / fill).toBeCloseTo(1, 2)
  })
  it('agrees with a fine grid where the surfaces are known in closed form (planes)', () => {
    const found = scatter(3, 40, (e, n) => 1 + 0.2 * e - 0.1 * n), wanted = scatter(4, 25, slope)
    let cut = 0, fill = 0
    const n = 1000
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) {
      const [e, u] = [(i + 0.5) * 10 / n, (j + 0.5) * 10 / n], above = 1 + 0.2 * e - 0.1 * u - slope(e, u)
      if (above > 0) cut += above
      else fill -= above
    }
    const made = surfaceVolume(found, wanted)
    expect(made.area).toBeCloseTo(100, 9)
    expect(made.cut).toBeCloseTo(cut * (10 / n) ** 2, 3)
    expect(made.fill).toBeCloseTo(fill * (10 / n) ** 2, 3)
  })
  it('draws near the true volume of a curved hill as spots grow many', () => {
    const exact = 3 * 8 * Math.PI // of the whole plane; all but 4 % of it lies over the square
    const off = [30, 300, 1500].map(n => Math.abs(surfaceVolume(scatter(9, n, hill), 0).cut / exact - 1))
    expect(off[2]).toBeLessThan(0.06)
    const fine = surfaceVolume(scatter(10, 1500, hill), 0).cut
    expect(surfaceVolume(scatter(11, 1500, hill), 0).cut / fine).toBeCloseTo(1, 2)
  })
  it.each([1, 2, 3, 4, 5])('cut less fill is the same whichever surface is asked first, turned, moved or shuffled (seed %i)', (seed) => {
    const found = scatter(seed, 30, hill), wanted = scatter(seed + 50, 20, slope), one = surfaceVolume(found, wanted)
    const other = surfaceVolume(wanted, found)
    expect(other.cut).toBeCloseTo(one.fill, 9)
    expect(other.fill).toBeCloseTo(one.cut, 9)
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)]
    const turn = ([e, n, u]: Enu): Enu => [512_300 + c * e - s * n, 4_204_100 + s * e + c * n, u + 1650]
    const turned = surfaceVolume(found.map(turn), wanted.map(turn))
    expect(turned.cut).toBeCloseTo(one.cut, 5) // large grid coordinates hold 1e-9 m
    expect(turned.fill).toBeCloseTo(one.fill, 5)
    expect(surfaceVolume([...found].reverse(), wanted).cut).toBeCloseTo(one.cut, 9)
  })
  it('leaves what it is given as it was', () => {
    const found = Object.freeze(square(4, 1).map(p => Object.freeze(p)))
    expect(surfaceVolume(found as readonly Enu[], 0).cut).toBeCloseTo(16, 12)
  })
  it.each<[string, Enu[]]>([['none', []], ['one', [[0, 0, 1]]], ['two', [[0, 0, 1], [1, 0, 1]]], ['NaN', [[0, 0, 1], [1, 0, NaN], [0, 1, 1]]]])(
    'refuses %s', (_, points) => { expect(() => surfaceVolume(points, 0)).toThrow(InputError) })
  it.each<[string, Enu[]]>([['all on one spot', [[1, 1, 0], [1, 1, 1], [1, 1, 2]]], ['all in one line', [[0, 0, 0], [1, 1, 5], [2, 2, 0], [5, 5, 1]]]])(
    'says that spots are %s', (_, points) => { expect(() => surfaceVolume(points, 0)).toThrow(DegenerateError) })
  it('takes the first of two heights on one spot', () => { expect(surfaceVolume([...square(2, 1), [0, 0, 9]], 0).cut).toBeCloseTo(4, 12) })
  it('holds for the very small and the very large alike', () => {
    for (const size of [1e-6, 1e6]) expect(surfaceVolume(square(size, size), 0).cut / size ** 3).toBeCloseTo(1, 9)
  })
})
