import type { Assume, AssumptionName } from '../assumptions.ts'
import { plural } from '../words.ts'
import { isVein, isWall } from './densities.ts'
import type { MaterialDensity } from './densities.ts'

const materials: readonly (readonly [AssumptionName, (material: string) => boolean])[] = [['vein density', isVein], ['wall density', isWall]]

/** The standing figures with the crew's own density tests in the place of the book's guesses; what the crew has written as an assumption goes before both. */
export function measuredDensity(assume: Assume, densities: readonly MaterialDensity[]): Assume {
  const measured = new Map(materials.flatMap(([name, fits]) => {
    const own = densities.filter(d => fits(d.material)), best = [...own].sort((a, b) => b.from.length - a.from.length)[0]
    return best ? [[name, best] as const] : []
  }))
  return (name) => {
    const given = assume(name), own = measured.get(name)
    if (!own || given.entry !== undefined) return given
    return { ...given, value: own.value, low: own.low, high: own.high, unit: 't/m3', why: `${own.material}, the crew's own ${plural(own.from.length, 'test')}`, entry: own.from[0]! }
  }
}
