import type { Kind } from '@lodebook/book'

/** Fields that a crew fills in at the face, in the order of the hands; the rest is one tap away. */
const first: Readonly<Record<string, readonly string[]>> = {
  shot: ['from', 'to', 'distance', 'azimuth', 'inclination', 'backAzimuth', 'backInclination', 'left', 'right', 'up', 'down'],
  sample: ['bag', 'place', 'width', 'direction', 'method', 'visibleGold', 'massWet'],
  target: ['mark', 'place', 'strength', 'character', 'outcome'],
  sweep: ['from', 'to', 'sides', 'result', 'marks'],
  'target-check': ['mark', 'found', 'became', 'piece', 'bag'],
  custody: ['bags', 'act', 'who', 'to', 'when', 'seal', 'intact'],
  structure: ['feature', 'place', 'strike', 'dip', 'name'],
  width: ['vein', 'place', 'measured', 'direction'],
  pan: ['bag', 'mass', 'portion', 'colours', 'goldMass'],
  assay: ['bag', 'gold', 'laboratory', 'method', 'certificate'],
  air: ['place', 'taken', 'oxygen', 'carbonMonoxide', 'carbonDioxide', 'methane', 'hydrogenSulphide', 'heldAt'],
  rock: ['place', 'rqd', 'strength', 'spacing', 'condition', 'water', 'orientation'],
  scaling: ['place', 'taken', 'pieces', 'largest', 'left', 'by'],
  'going-in': ['people', 'in', 'due', 'outside', 'reach', 'going', 'call'],
  work: ['worked', 'task', 'people', 'hours', 'heading', 'loads'],
  digging: ['name', 'sort', 'material', 'carrier', 'loadVolume', 'haul', 'haulGrade', 'people', 'state'],
  section: ['job', 'at', 'found', 'wanted'],
  spot: ['job', 'surface', 'place', 'up'],
  load: ['job', 'at', 'count', 'people'],
  'wall-shot': ['from', 'distance', 'azimuth', 'inclination', 'on'],
  paced: ['from', 'to', 'paces', 'azimuth', 'width', 'heading'],
  survey: ['name', 'year', 'compassPrecision', 'tapePrecision', 'northDoubt', 'use'],
  rename: ['was', 'now', 'why'],
  relic: ['item', 'place', 'from', 'to', 'left'],
}

/** A kind's fields in the order of its form: those asked for at once, and those kept folded away. */
export function shapeOf(kind: Kind): { readonly first: readonly string[], readonly rest: readonly string[] } {
  const names = Object.keys(kind.fields)
  const asked = first[kind.id] ?? names.filter((name, i) => kind.fields[name]!.required === true || i < 5)
  const required = names.filter(name => kind.fields[name]!.required === true && !asked.includes(name))
  const front = [...asked, ...required]
  return { first: front, rest: names.filter(name => !front.includes(name)) }
}

/** Kinds of entry as they stand on the page for writing, by what one is doing. */
export const groups: readonly { readonly name: string, readonly kinds: readonly string[] }[] = [
  { name: 'Survey and ground', kinds: ['shot', 'structure', 'width', 'wall-shot', 'heading', 'tie', 'worked-out', 'paced', 'panel', 'heap'] },
  { name: 'Air, ground and going in', kinds: ['air', 'ground', 'hazard', 'going-in', 'check', 'scaling', 'rock', 'opening', 'fan', 'outside', 'limit'] },
  { name: 'Finds', kinds: ['sample', 'target', 'target-check', 'sweep', 'relic', 'photo'] },
  { name: 'Bags', kinds: ['custody', 'label-roll', 'split'] },
  { name: 'At the bench', kinds: ['pan', 'assay', 'certificate', 'density', 'standard', 'colour-class'] },
  { name: 'Digging', kinds: ['digging', 'section', 'spot', 'load'] },
  { name: 'Days and money', kinds: ['work', 'option', 'cost', 'price', 'crushing'] },
  { name: 'The mine itself', kinds: ['mine', 'instrument', 'survey', 'rename', 'assumption'] },
]
