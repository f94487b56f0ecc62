import type { Entry } from '@lodebook/book'
import { alterationNumbers, fieldStrengths, qSource, rmrSource, rockMassRating, rockQuality, roughnessNumbers, setNumbers, stressNumbers, supportRatios, unsupportedSpan, waterNumbers } from '@lodebook/reckon/ground'
import type { RmrInput } from '@lodebook/reckon/ground'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, placeOf, textOf, valueOf } from '../read.ts'
import { figure, length } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { RockAt } from './ground-shapes.ts'
import { placeName } from './place-name.ts'

const span = (hours: number): string => hours >= 8766 ? `${figure(hours / 8766, 2)} years` : hours >= 168 ? `${figure(hours / 168, 2)} week` : hours >= 1 ? `${figure(hours, 2)} hours` : `${figure(hours * 60, 2)} minutes`
const cautions = ['A classification is a yardstick for tunnels in many kinds of rock, not a test of this back. It says nothing of one loose slab.']

/** What two classifications make of the rock at one place, beside the width of the heading there. */
export function rockAt(entry: Entry, distance: number | undefined, width: number | undefined, units: CrewUnits): RockAt {
  const where = placeName(placeOf(entry)), rating = ratingOf(entry, where, units), quality = qualityOf(entry, where, units)
  const said = (answer: Answer | undefined, name: string, widest: number | undefined) => answer === undefined || widest === undefined ? [`${name} can't be reckoned here: ${missing(entry, name).join(', ')} not written.`]
    : width === undefined ? [] : [width > widest ? `${name}: the heading is ${length(width, units, 2)} wide, more than the ${length(widest, units, 2)} the table leaves without support.` : `${name}: the heading is ${length(width, units, 2)} wide; the table's widest without support is ${length(widest, units, 2)}.`]
  return { entry: entry.id, where, distance, taken: textOf(entry, 'taken'), width, rating: rating?.answer, quality: quality?.answer, says: [...said(rating?.answer, 'RMR', rating?.span), ...said(quality?.answer, 'Q', quality?.span)] }
}

const needed: Readonly<Record<string, readonly string[]>> = { RMR: ['rqd', 'strength', 'spacing', 'condition', 'water', 'orientation'], Q: ['rqd', 'sets', 'roughness', 'alteration', 'water', 'stress'] }
const missing = (entry: Entry, name: string): readonly string[] => needed[name]!.filter(field => entry.fields[field] === undefined)

function ratingOf(entry: Entry, where: string, units: CrewUnits): { readonly answer: Answer, readonly span: number } | undefined {
  if (missing(entry, 'RMR').length > 0) return undefined
  const { total, parts, class: found } = rockMassRating({
    strengthMPa: fieldStrengths[textOf(entry, 'strength') as keyof typeof fieldStrengths], rqd: numberOf(entry, 'rqd')!, spacingM: valueOf(entry, 'spacing')!,
    condition: textOf(entry, 'condition') as RmrInput['condition'], water: textOf(entry, 'water') as RmrInput['water'], orientation: textOf(entry, 'orientation') as RmrInput['orientation'],
  })
  return {
    span: found.spanM,
    answer: buildAnswer({
      id: `ground.rmr.${entry.id}`, value: total, unit: 'RMR', sentence: `${where}: RMR ${total}, class ${found.name}, ${found.says}; the table gives a span of ${length(found.spanM, units, 2)} about ${span(found.standUpHours)} before it comes.`,
      method: { name: 'rock mass rating, 1989', page: 'rock-mass', working: [`strength ${parts.strength} + RQD ${parts.rqd} + spacing ${parts.spacing} + joints ${parts.condition} + water ${parts.water} + lie of the joints ${parts.orientation} = ${total}`] },
      sources: [rmrSource, 'strength by nail, knife and hammer: ISRM field grades, from memory'], from: [entry.id], cautions,
    }),
  }
}

function qualityOf(entry: Entry, where: string, units: CrewUnits): { readonly answer: Answer, readonly span: number } | undefined {
  if (missing(entry, 'Q').length > 0) return undefined
  const of = <T extends Readonly<Record<string, number>>>(table: T, field: string): number => table[textOf(entry, field)!]!
  const [rqd, jn, jr, ja, jw, srf] = [numberOf(entry, 'rqd')!, of(setNumbers, 'sets'), of(roughnessNumbers, 'roughness'), of(alterationNumbers, 'alteration'), of(waterNumbers, 'water'), of(stressNumbers, 'stress')]
  const q = rockQuality({ rqd, jn, jr, ja, jw, srf }), widest = unsupportedSpan(q, supportRatios.permanent)
  return {
    span: widest,
    answer: buildAnswer({
      id: `ground.q.${entry.id}`, value: q, unit: 'Q', sentence: `${where}: Q ${figure(q, 2)}; the formula's widest span without support is ${length(widest, units, 2)} for an opening that is to stay, ${length(unsupportedSpan(q, supportRatios.temporary), units, 2)} for a short-lived one.`,
      method: { name: 'rock mass quality Q', page: 'rock-mass', working: [`RQD/Jn × Jr/Ja × Jw/SRF = ${Math.max(10, rqd)}/${jn} × ${jr}/${ja} × ${jw}/${srf} = ${figure(q)}`, `2 × ESR × Q^0.4 = 2 × ${supportRatios.permanent} × ${figure(q ** 0.4)} = ${figure(widest)} m`] },
      sources: [qSource], from: [entry.id], cautions,
    }),
  }
}
