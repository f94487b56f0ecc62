import { finite, InputError } from '../core/index.ts'

/** A taped ground line across the work: distance across and height, each in metres, `across` rising. */
export type Profile = readonly (readonly [across: number, height: number])[]

export interface CutAndFill { readonly cut: number, readonly fill: number }

/**
 * Cut and fill areas between the ground as it lies and the ground as it is wanted, over the width where both are known.
 *
 * Exact for ground lines straight between their points: the two are split where either bends and where they cross.
 * @param found  two or more points, metres
 * @param wanted  two or more points, metres, on the same two axes
 * @returns square metres; cut where the ground stands above what is wanted
 * @throws InputError for fewer than two points, numbers that are not finite, `across` that does not rise, or lines that do not lie over each other
 */
export function profileAreas(found: Profile, wanted: Profile): CutAndFill {
  checkedProfile(found, 'found')
  checkedProfile(wanted, 'wanted')
  const from = Math.max(found[0]![0], wanted[0]![0]), to = Math.min(found.at(-1)![0], wanted.at(-1)![0])
  if (!(to > from)) throw new InputError('wanted', wanted, 'a line that lies over the ground as found')
  const at = [...new Set([from, to, ...[...found, ...wanted].map(([x]) => x).filter(x => x > from && x < to)])].sort((a, b) => a - b)
  const above = at.map(x => heightAt(found, x) - heightAt(wanted, x))
  let cut = 0, fill = 0
  for (let i = 1; i < at.length; i++) {
    const [a, b, width] = [above[i - 1]!, above[i]!, at[i]! - at[i - 1]!]
    if (a * b >= 0) {
      const area = width * (a + b) / 2
      if (area > 0) cut += area
      else fill -= area
      continue
    }
    const share = a / (a - b) // of the width before the two lines cross
    const [before, after] = [width * share * a / 2, width * (1 - share) * b / 2]
    cut += Math.max(before, after)
    fill -= Math.min(before, after)
  }
  return { cut, fill }
}

/** Height of a ground line at a distance across, straight between its points; level beyond its ends. */
export function heightAt(profile: Profile, across: number): number {
  const next = profile.findIndex(([x]) => x >= across)
  if (next <= 0) return (next === 0 ? profile[0] : profile.at(-1))![1]
  const [[x0, z0], [x1, z1]] = [profile[next - 1]!, profile[next]!]
  return z0 + (z1 - z0) * (across - x0) / (x1 - x0)
}

/** The ground line half-way between two others, as a straight line from one to the other finds it. */
export function profileBetween(a: Profile, b: Profile): Profile {
  const from = (a[0]![0] + b[0]![0]) / 2, to = (a.at(-1)![0] + b.at(-1)![0]) / 2
  const share = (p: Profile, t: number) => p[0]![0] + t * (p.at(-1)![0] - p[0]![0])
  const bends = (p: Profile) => p.map(([x]) => (x - p[0]![0]) / (p.at(-1)![0] - p[0]![0]))
  return [...new Set([...bends(a), ...bends(b)])].sort((s, t) => s - t)
    .map(t => [from + t * (to - from), (heightAt(a, share(a, t)) + heightAt(b, share(b, t))) / 2] as const)
}

function checkedProfile(profile: Profile, field: string): void {
  if (profile.length < 2) throw new InputError(field, profile, 'two or more points across')
  for (const [i, [x, z]] of profile.entries()) {
    finite(x, `${field}[${i}].across`)
    finite(z, `${field}[${i}].height`)
    const before = profile[i - 1]
    if (before && x <= before[0]) throw new InputError(`${field}[${i}].across`, x, `a distance beyond the point before it, ${before[0]}`)
  }
}
