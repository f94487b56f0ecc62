import type { Caution, Topic } from './shapes.ts'

/** What to take care of, by what calls for it. Common practice where no source is named; section numbers as marked. */
export const cautionsOf: Readonly<Record<Topic, readonly Caution[]>> = Object.fromEntries(([
  ['explosives', 'Old explosives: do not touch, move, prod or shade a lamp close. Go back the way you came, mark it off, keep everybody away, report it to the authority. Old dynamite sweats and caps corrode; age makes them worse.', 'common practice; disposal is for licensed blasters or the authority'],
  ['animals', 'Look before a hand or a foot goes in: snakes lie at portals and under boards, spiders and bees in dry timber. A den of something larger: back out, leave the way open to it.', 'common practice, no source'],
  ['bats', 'Bats: leave them. No smoke, no lights on them, no work where they hang. Breeding (about May to August) and winter sleep (about October to April) are when disturbing them kills; they are protected in many places. Ask the wildlife agency before the gate, the brow or the air is changed.', 'common practice; months are for the northern half of the world, local law decides'],
  ['droppings', 'Mouse and pack-rat droppings can carry hantavirus, bat droppings a lung fungus. Do not sweep or kick dry: air it, wet it with bleach water (1 part to 9), wait, wear a fitted particle respirator (P100) and gloves, bag it.', 'public health advice on hantavirus (CDC), from memory'],
  ['water', 'Water that stands behind a fall or in an upper level can come all at once. Do not break a dam of muck from below. Water stirred in old stopes gives off gas. Rising, warmer or newly muddy water: out.', 'common practice, no source'],
  ['winze or shaft', 'A winze may be boarded over and the boards rotten; water hides it. Test every step with a bar where the sill is wood, wet or hollow. Nobody is lowered, and the air in it is not the air beside it.', 'common practice, no source'],
  ['timber', 'Old timber may stand and bear nothing. Do not lean on it, pull it or hammer it. Damaged or dislodged timber is put right before any other work or travel there.', '30 CFR 57.3360 (V)'],
  ['alone', 'Nobody works alone where a hazard stands unless they can be heard or seen by somebody.', '30 CFR 57.18025 (V)'],
  ['heat or cold', 'Wet bulb tells heat, not dry bulb. Above 25 °C wet bulb only in moving air; above about 32 °C stop. Wet and below about 10 °C with wind chills a person who sits still within the hour: dry clothes inside, a warm drink, somebody to watch.', 'from memory; check local rules'],
  ['mercury or lead', 'Old mill ground: no food, no drink, no bare hands, no dust. Silver beads in the sand are mercury: leave them, mark the place, ask the agency. Wash before the car.', 'common practice, no source'],
  ['wires or machines', 'Treat every wire as live and every hanging machine as about to fall.', 'common practice, no source'],
  ['air', 'A meter reads where it is held. Read at the sill, waist and back, ahead of you as you go; lower it on a line before a winze, never go after it. It reads only the gases it has a cell for.', 'common practice, no source'],
  ['ground', 'Ground is examined and tested by an experienced person before work, after any shot and as conditions call for; what is loose is taken down or held up before anybody passes, from a place that is itself protected.', '30 CFR 57.3200, 57.3201, 57.3401 (V)'],
] as const).map(([topic, says, source]) => [topic, [{ topic, says, source }]])) as unknown as Record<Topic, readonly Caution[]>

/** What a written hazard calls for. Its own words may call for more than its sort: bats among animals. */
export function topicsOf(sort: string, words: string): readonly Topic[] {
  const bySort: Readonly<Record<string, Topic>> = {
    'old explosives': 'explosives', animals: 'animals', bats: 'bats', droppings: 'droppings', water: 'water', 'winze or shaft': 'winze or shaft', 'rotten timber': 'timber',
    'bad air': 'air', 'bad ground': 'ground', 'mercury or lead': 'mercury or lead', 'heat or cold': 'heat or cold', 'wires or machines': 'wires or machines',
  }
  const own = bySort[sort]
  return [...new Set([...own ? [own] : [], .../\bbats?\b|guano/i.test(words) ? ['bats' as const] : [], .../dropping|mice|mouse|rats?\b|guano|nest/i.test(words) ? ['droppings' as const] : []])]
}
