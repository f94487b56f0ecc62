import type { Enu } from '@lodebook/reckon'
import { add, minus, times } from './vectors.ts'

/**
 * The level turn and the shift that bring a crew's grid onto the truth's frame, from stations that both know, by least squares. A GPS fix that
 * is metres off and a declination that is a third of a degree off move the whole map; held so, its shape can be compared.
 * @param crew  station name and its place in the crew's grid, metres
 * @returns a function from the crew's grid to the truth's frame
 */
export function align(crew: Iterable<readonly [name: string, point: Enu]>, truth: ReadonlyMap<string, { readonly point: Enu }>): (p: Enu) => Enu {
  const pairs = [...crew].flatMap(([name, point]) => {
    const known = truth.get(name)
    return known === undefined ? [] : [[point, known.point] as const]
  })
  const mean = (points: readonly Enu[]): Enu => times(points.reduce<Enu>(add, [0, 0, 0]), 1 / points.length)
  const from = mean(pairs.map(([p]) => p)), to = mean(pairs.map(([, p]) => p))
  let cross = 0, inner = 0
  for (const [p, q] of pairs) {
    const x = minus(p, from), y = minus(q, to)
    cross += x[0] * y[1] - x[1] * y[0]
    inner += x[0] * y[0] + x[1] * y[1]
  }
  const turn = Math.atan2(cross, inner), c = Math.cos(turn), s = Math.sin(turn)
  return (p) => {
    const d = minus(p, from)
    return [to[0] + c * d[0] - s * d[1], to[1] + s * d[0] + c * d[1], to[2] + d[2]]
  }
}
