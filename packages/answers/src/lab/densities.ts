import type { Entry } from '@lodebook/book'
import { immersionDensity, voidsOf } from '@lodebook/reckon/assay'
import { mean, standardDeviation } from '@lodebook/reckon/statistics'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { textOf, valueOf } from '../read.ts'
import { figure, plural } from '../words.ts'

/** One lump of rock from a heap of others differs by so much at least, t/m³. Common practice, no source. */
const leastSpread = 0.03
/** A kitchen or spring scale, share of what it shows. Common practice, no source. */
const scaleShare = 0.002

/** The density of one material by the crew's own tests, t/m³. */
export interface MaterialDensity {
  readonly material: string
  readonly value: number
  /** 80 %, of the mean. */
  readonly low: number
  readonly high: number
  readonly from: readonly string[]
  readonly answer: Answer
}

interface Tested { readonly entry: Entry, readonly density: number, readonly says: string, readonly open: boolean }

/** Solid rock by water or by what the crew knows; rock in bulk, as broken, apart from it. */
export function densitiesOf(tests: readonly Entry[]): readonly MaterialDensity[] {
  const solid = tests.flatMap(t => solidOf(t) ?? []), bulk = tests.flatMap(t => bulkOf(t) ?? [])
  const materials = (of: readonly Tested[]) => [...new Set(of.map(t => textOf(t.entry, 'material')!))]
  const named = (of: readonly Tested[], material: string) => of.filter(t => textOf(t.entry, 'material') === material)
  const densities = materials(solid).map(material => solidDensity(material, named(solid, material)))
  const rock = densities.find(d => isVein(d.material)) ?? densities[0]
  return [...densities, ...materials(bulk).map(material => bulkDensity(material, named(bulk, material), rock))]
}

/** Whether a test's material is the vein: it says so, or it says quartz, and it is not broken rock. */
export const isVein = (material: string): boolean => /\b(vein|quartz|reef|lode|ore)\b/i.test(material) && !/\b(broken|muck|mucked|gob|wall|tub)\b/i.test(material)
export const isWall = (material: string): boolean => /\b(wall|country|waste|schist|granite|slate|andesite)\b/i.test(material) && !/\b(broken|muck|mucked|gob|vein)\b/i.test(material)

function solidOf(entry: Entry): Tested | undefined {
  const given = valueOf(entry, 'density'), dry = valueOf(entry, 'dry'), inWater = valueOf(entry, 'inWater')
  if (given !== undefined) return { entry, density: given, says: `given as ${figure(given)} t/m³`, open: false }
  if (dry === undefined || inWater === undefined || inWater >= dry) return undefined
  const celsius = Math.min(100, Math.max(0, valueOf(entry, 'temperature') ?? 15))
  const { density } = immersionDensity({ dry, inWater, celsius })
  return { entry, density, open: entry.fields['sealed'] !== true, says: `${figure(dry, 3)} g dry, ${figure(inWater, 3)} g in water at ${figure(celsius, 2)} °C: ${figure(density, 3)} t/m³` }
}

function bulkOf(entry: Entry): Tested | undefined {
  const mass = valueOf(entry, 'bulkMass') ?? valueOf(entry, 'dry'), volume = valueOf(entry, 'bulkVolume')
  if (mass === undefined || volume === undefined) return undefined
  const density = mass / 1e6 / volume
  return { entry, density, open: false, says: `${figure(mass / 1000, 3)} kg in ${figure(volume, 3)} m³` }
}

function solidDensity(material: string, tests: readonly Tested[]): MaterialDensity {
  const values = tests.map(t => t.density), value = mean(values), n = values.length
  const spread = Math.max(n > 2 ? standardDeviation(values) : 0, leastSpread)
  const half = 1.2816 * Math.hypot(spread / Math.sqrt(n), scaleShare * value * value)
  const open = tests.filter(t => t.open).length
  const range = { low: value - half, high: value + half }
  return {
    material, value, ...range, from: tests.map(t => t.entry.id),
    answer: buildAnswer({
      id: `lab.density.${material.replace(/\W+/g, '-')}`, value, unit: 't/m3', range: { ...range, confidence: 0.8, because: ['lumps differ', 'the scale'] },
      sentence: `${material}: ${figure(value, 3)} t/m³ by ${plural(n, 'test')}.`,
      method: { name: 'weighed dry and in water, at the water\'s temperature', page: 'rock-density', working: tests.map(t => t.says) },
      sources: ['Density of water: Kell, J. Chem. Eng. Data 20, 1975, 97 (from memory)'], from: tests.map(t => t.entry.id),
      cautions: open === 0 ? [] : [`${plural(open, 'lump')} not waxed or wrapped: where pores drank water, the density reads too high.`],
    }),
  }
}

function bulkDensity(material: string, tests: readonly Tested[], rock: MaterialDensity | undefined): MaterialDensity {
  const value = mean(tests.map(t => t.density)), solid = rock && rock.value > value ? rock : undefined
  const half = 1.2816 * 0.03 * value / Math.sqrt(tests.length)
  return {
    material, value, low: value - half, high: value + half, from: tests.map(t => t.entry.id),
    answer: buildAnswer({
      id: `lab.density.${material.replace(/\W+/g, '-')}`, value, unit: 't/m3', range: { low: value - half, high: value + half, confidence: 0.8, because: ['how full the tub was'] },
      sentence: `${material}: ${figure(value, 3)} t/m³ in bulk${solid ? `, so ${figure(100 * voidsOf(value, solid.value), 2)} % of the room is empty and the rock swells ${figure(solid.value / value, 3)} times` : ''}.`,
      method: { name: 'mass over volume; voids are what the rock does not fill', page: 'rock-density', working: [...tests.map(t => t.says),
        ...(solid ? [`1 − ${figure(value, 3)} / ${figure(solid.value, 3)} = ${figure(voidsOf(value, solid.value), 2)}`] : [])] },
      from: tests.map(t => t.entry.id), parts: solid ? [solid.answer] : [],
    }),
  }
}
