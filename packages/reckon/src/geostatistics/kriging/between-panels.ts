import type { Covariance } from '../covariance.ts'
import { covarianceBetween } from '../support.ts'
import type { Support } from '../support.ts'
import type { Panel } from './panel.ts'

/**
 * Covariances of the field's averages over every two panels, the nugget left out: lower triangle of m x m, row-major.
 *
 * For panels alike in shape they are worked out once per offset: a grid of panels has far fewer offsets than pairs.
 * @param grain  differences of place below this are none; 0 leaves every pair to itself
 */
export function betweenPanels(covariance: Covariance, panels: readonly Panel[], grain: number): Float64Array {
  const m = panels.length
  const result = new Float64Array(m * m).fill(NaN)
  if (grain > 0) {
    for (const members of alike(panels, grain)) {
      if (members.length > 1) fillAlike(covariance, panels, members, grain, result)
    }
  }
  for (let a = 0; a < m; a++) {
    for (let b = 0; b <= a; b++) {
      if (Number.isNaN(result[a * m + b]!)) result[a * m + b] = between(covariance, panels[a]!, panels[b]!)
    }
  }
  return result
}

const between = (covariance: Covariance, a: Panel, b: Panel): number => covarianceBetween(covariance, a.support, a.x, a.y, b.support, b.x, b.y)

/** Panels (by index, ascending) that have the same points at the same offsets, to within the grain, with the same weights. */
function alike(panels: readonly Panel[], grain: number): number[][] {
  const texts = new Map<Support, string>()
  const groups = new Map<string, number[]>()
  panels.forEach(({ support }, i) => {
    let text = texts.get(support)
    if (text === undefined) {
      const offsets = (values: Float64Array) => Array.from(values, value => Math.round(value / grain)).join(' ')
      texts.set(support, text = `${offsets(support.dxs)}|${offsets(support.dys)}|${support.weights.join(' ')}`)
    }
    const group = groups.get(text)
    if (group === undefined) groups.set(text, [i])
    else group.push(i)
  })
  return [...groups.values()]
}

/** One table over the distinct offsets in x and in y; left alone where that table would be larger than the pairs it serves. */
function fillAlike(covariance: Covariance, panels: readonly Panel[], members: readonly number[], grain: number, result: Float64Array): void {
  const m = panels.length
  const n = members.length
  const x = offsetsOf(members.map(i => panels[i]!.x), grain)
  const y = offsetsOf(members.map(i => panels[i]!.y), grain)
  if (x.kinds * y.kinds > n * n) return
  const table = new Float64Array(x.kinds * y.kinds).fill(NaN)
  for (let i = 0; i < n; i++) {
    const row = members[i]! * m
    for (let j = 0; j <= i; j++) {
      const at = x.kind[x.place[i]! * x.places + x.place[j]!]! * y.kinds + y.kind[y.place[i]! * y.places + y.place[j]!]!
      if (Number.isNaN(table[at]!)) table[at] = between(covariance, panels[members[i]!]!, panels[members[j]!]!)
      result[row + members[j]!] = table[at]!
    }
  }
}

interface Offsets {
  /** Number of each member's coordinate among the distinct ones, of which there are `places`. */
  readonly place: Int32Array
  readonly places: number
  /** [place * places + place]: number of their difference among the distinct differences, of which there are `kinds`. */
  readonly kind: Int32Array
  readonly kinds: number
}

function offsetsOf(values: readonly number[], grain: number): Offsets {
  const number = (map: Map<number, number>, key: number) => {
    let found = map.get(key)
    if (found === undefined) map.set(key, found = map.size)
    return found
  }
  const distinct = new Map<number, number>()
  const place = Int32Array.from(values, value => number(distinct, Math.round(value / grain)))
  const at = [...distinct.keys()]
  const differences = new Map<number, number>()
  const kind = new Int32Array(at.length * at.length)
  at.forEach((a, i) => at.forEach((b, j) => { kind[i * at.length + j] = number(differences, a - b) }))
  return { place, places: at.length, kind, kinds: differences.size }
}
