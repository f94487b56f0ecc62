import { gradeOf, leastSamples, tooFewSamples } from '../../grade/grade.ts'
import { groundAt } from '../../grade/ground-at.ts'
import type { GroundAt, GroundAtInput } from '../../grade/ground-at.ts'
import { widthOutcomes } from '../../grade/outcomes.ts'
import { samplesAt } from '../../grade/samples-at.ts'
import type { SampleAt } from '../../grade/shapes.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

const none: readonly SampleAt[] = []

/** Every bag with what may be believed of it and where it is on the vein. */
export const gradeSamples = (g: Graph) => g.once('grade samples', () => {
  const found = g.vein.value
  if (notEnough(found)) return none
  const places = g.placings.get('sample')!.value.at
  return samplesAt(g.of('sample').map(entry => ({ entry, sited: places.has(entry.id) ? { entry, located: places.get(entry.id)! } : undefined })),
    g.beliefs.value, found, g.units.value)
})

/** What hangs on places alone; the very same object as long as no place has changed. */
export const gradeGround = (g: Graph) => {
  let last: { readonly input: GroundAtInput, readonly made: GroundAt } | undefined
  return g.once('grade ground', (): GroundAt | undefined => {
    const found = g.vein.value
    if (notEnough(found)) return undefined
    const samples = gradeSamples(g).value.flatMap(s => s.used ? [{ entry: s.entry, at: s.at! }] : [])
    const input: GroundAtInput = { vein: found, samples, drawn: g.of('panel'), context: g.context.value, assume: g.assume.value, units: g.units.value }
    if (last && sameGround(last.input, input)) return last.made
    last = { input, made: groundAt(input) }
    return last.made
  })
}

const sameGround = (a: GroundAtInput, b: GroundAtInput): boolean => a.vein === b.vein && a.drawn === b.drawn &&
  a.context === b.context && a.assume === b.assume &&
  a.units === b.units && a.samples.length === b.samples.length && a.samples.every((s, i) => s.entry === b.samples[i]!.entry)

const gradeWidth = (g: Graph) => g.once('grade width', () => {
  const ground = gradeGround(g).value, found = g.vein.value
  if (!ground || notEnough(found)) return []
  const widths = found.at.widths.map((w, i) => ({ at: w.at, logValue: Math.log(w.width), errorVariance: (w.sigma / w.width) ** 2,
    site: ground.widthSites[i]! }))
  return widthOutcomes(ground, widths, g.assume.value)
})

/** How much gold, where, and how sure. */
export const grade = (g: Graph) => g.node('grade', () => {
  const found = g.vein.value
  if (notEnough(found)) return found
  const samples = gradeSamples(g).value, used = samples.filter(s => s.used).length
  if (used < leastSamples) return tooFewSamples(used)
  const ground = gradeGround(g).value!
  return gradeOf({
    vein: found, samples, beliefs: g.beliefs.value, ground, width: ground.panels.length === 0 ? [] : gradeWidth(g).value,
    assume: g.assume.value, units: g.units.value,
  })
})
