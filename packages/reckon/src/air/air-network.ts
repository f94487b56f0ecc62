import { DegenerateError, finite, InputError, positive } from '../core/index.ts'

/** One airway, or a way out of doors, between two junctions. */
export interface AirBranch {
  readonly name: string
  readonly from: string
  readonly to: string
  /** N s2/m8, above zero. */
  readonly resistance: number
  /** Pressure that drives air from `from` to `to`, Pa: natural draught along it, or a fan. 0 when left out. */
  readonly drive?: number
}

export interface SolvedBranch extends AirBranch {
  /** m3/s, positive from `from` to `to`. */
  readonly flowM3S: number
}

export interface AirNetwork {
  readonly branches: readonly SolvedBranch[]
  readonly rounds: number
  /** Largest pressure by which a closed way round fails to balance, Pa. */
  readonly imbalancePa: number
}

const mostRounds = 200

/**
 * Flows through a network of airways: at each junction as much comes in as goes out, and round each closed way the pressures R Q|Q| add up to
 * what drives them.
 *
 * The unknowns are the flows round independent closed ways. They are where the sum of R|Q|3/3 - drive Q over the branches is least; that sum is
 * convex, so Newton's steps with a line search reach its one minimum from anywhere. A branch on no closed way carries nothing.
 * @throws InputError for a branch without resistance or from a junction to itself; DegenerateError("no balance") if it does not settle
 * Source: Kirchhoff's laws with Atkinson's R Q2; H. Cross, Analysis of flow in networks of conduits or conductors, University of Illinois
 * Bulletin 286, 1936 (from memory); here by Newton on all closed ways at once instead of one by one.
 */
export function airNetwork(branches: readonly AirBranch[]): AirNetwork {
  branches.forEach((b, i) => {
    positive(b.resistance, `branches[${i}].resistance`, 'a resistance above zero, N s2/m8')
    finite(b.drive ?? 0, `branches[${i}].drive`)
    if (b.from === b.to) throw new InputError(`branches[${i}].to`, b.to, 'another junction than the one it starts from')
  })
  const loops = closedWays(branches), drive = branches.map(b => b.drive ?? 0), r = branches.map(b => b.resistance)
  const m = loops.length, x = new Float64Array(m)
  const flows = (at: Float64Array): Float64Array => {
    const q = new Float64Array(branches.length)
    loops.forEach((loop, l) => { for (const [b, sign] of loop) q[b]! += sign * at[l]! })
    return q
  }
  const energy = (q: Float64Array): number => q.reduce((sum, v, b) => sum + r[b]! * Math.abs(v) ** 3 / 3 - drive[b]! * v, 0)
  const gradient = (q: Float64Array): number[] =>
    loops.map(loop => loop.reduce((sum, [b, sign]) => sum + sign * (r[b]! * q[b]! * Math.abs(q[b]!) - drive[b]!), 0))
  const scale = Math.max(...drive.map(Math.abs), 0)
  // A flow as great as the drives could push through the least resistance: what the floor under the slope is measured against.
  const floor = 1e-9 * Math.sqrt(scale / Math.min(...r, 1))
  let rounds = 0, q = flows(x), g = gradient(q)
  for (; rounds < mostRounds && scale > 0 && Math.max(...g.map(Math.abs), 0) > 1e-12 * scale; rounds++) {
    const slope = q.map((v, b) => 2 * r[b]! * Math.max(Math.abs(v), floor))
    const step = solve(loops.map(a => loops.map(b => shared(a, b, slope))), g.map(v => -v))
    const [before, fall] = [energy(q), g.reduce((sum, v, i) => sum + v * step[i]!, 0)]
    let share = 1
    for (; share > 1e-14; share /= 2) {
      const next = flows(x.map((v, i) => v + share * step[i]!))
      if (energy(next) <= before + 1e-4 * share * fall || Math.abs(share * fall) < 1e-15 * Math.abs(before)) break
    }
    for (let i = 0; i < m; i++) x[i]! += share * step[i]!
    q = flows(x)
    g = gradient(q)
  }
  const imbalancePa = Math.max(...g.map(Math.abs), 0)
  if (imbalancePa > 1e-6 * Math.max(scale, 1e-12)) throw new DegenerateError('no balance', 'branches', imbalancePa, 'resistances and drives within reason of each other')
  return { branches: branches.map((b, i) => ({ ...b, flowM3S: q[i]! || 0 })), rounds, imbalancePa }
}

type Way = readonly (readonly [branch: number, sign: 1 | -1])[]

/** One closed way for each branch that is not in a spanning tree: along it, and back through the tree. */
function closedWays(branches: readonly AirBranch[]): readonly Way[] {
  const up = new Map<string, { readonly to: string, readonly branch: number, readonly sign: 1 | -1, readonly depth: number } | undefined>()
  const inTree = new Set<number>()
  for (const start of branches.flatMap(b => [b.from, b.to])) {
    if (up.has(start)) continue
    up.set(start, undefined)
    const waiting = [start]
    for (let here = waiting.shift(); here !== undefined; here = waiting.shift()) {
      branches.forEach((b, i) => {
        const there = b.from === here ? b.to : b.to === here ? b.from : undefined
        if (there === undefined || up.has(there)) return
        up.set(there, { to: here, branch: i, sign: b.from === there ? 1 : -1, depth: (up.get(here)?.depth ?? 0) + 1 })
        inTree.add(i)
        waiting.push(there)
      })
    }
  }
  return branches.flatMap((b, i): Way[] => {
    if (inTree.has(i)) return []
    const way: [number, 1 | -1][] = [[i, 1]]
    let [back, ahead] = [b.to, b.from]
    while (back !== ahead) {
      const [a, c] = [up.get(back), up.get(ahead)]
      if ((a?.depth ?? 0) >= (c?.depth ?? 0)) { way.push([a!.branch, a!.sign]); back = a!.to } else {
        way.push([c!.branch,
          c!.sign === 1 ? -1 : 1]); ahead = c!.to
      }
    }
    return [way]
  })
}

function shared(a: Way, b: Way, slope: ArrayLike<number>): number {
  const signs = new Map(b)
  return a.reduce((sum, [branch, sign]) => sum + (signs.has(branch) ? sign * signs.get(branch)! * slope[branch]! : 0), 0)
}

/** Gauss elimination with the largest pivot; small systems. */
function solve(a: number[][], b: number[]): number[] {
  const n = b.length
  for (let k = 0; k < n; k++) {
    let p = k
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[p]![k]!)) p = i
    ;[a[k], a[p]] = [a[p]!, a[k]!]
    ;[b[k], b[p]] = [b[p]!, b[k]!]
    for (let i = k + 1; i < n; i++) {
      const f = a[i]![k]! / a[k]![k]!
      for (let j = k; j < n; j++) a[i]![j]! -= f * a[k]![j]!
      b[i]! -= f * b[k]!
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = k + 1; j < n; j++) b[k]! -= a[k]![j]! * b[j]!
    b[k]! /= a[k]![k]!
  }
  return b
}
