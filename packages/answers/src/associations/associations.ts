import type { NotEnough } from '../answer.ts'
import { holm } from '@lodebook/reckon/statistics'
import type { CrewUnits } from '../words.ts'
import { length, plural } from '../words.ts'
import { compareMeasured, comparePresent, fewestEach, told } from './compare.ts'
import type { Asked, GoldOf } from './compare.ts'
import type { Associations } from './shapes.ts'

/** A bag cut from the wall: what is believed of its gold, and all that may go with it. */
export interface BagSeen extends GoldOf {
  readonly marks: ReadonlySet<string>
  /** Metres. */
  readonly width: number | undefined
  readonly fromFault: number | undefined
  /** Strength of the strongest signal within a metre and a half; 0 when the wall there was swept and silent. */
  readonly signal: number | undefined
}

const fewestBags = 2 * fewestEach

/** What goes with gold: every mark, the thickness, the distance from the fault, the strength of signals. */
export function associationsOf(bags: readonly BagSeen[], units: CrewUnits): Associations | NotEnough {
  if (bags.length < fewestBags) {
    return {
      notEnough: true, cautions: [], sentence: `Not enough to say what goes with gold: ${plural(bags.length, 'bag')} cut from the wall ${bags.length === 1 ? 'has' : 'have'} a grade; ${fewestBags} are the least.`,
      wanted: [{ kind: 'sample', why: 'channel or chip samples, with what is seen in each: iron stain, clay, crystals, sulphides' }, { kind: 'pan', why: 'a pan of each bag is enough to rank it' }],
    }
  }
  const marks = [...new Set(bags.flatMap(b => [...b.marks]))].sort()
  const asked: readonly Asked[] = [
    ...marks.filter(mark => bags.some(b => !b.marks.has(mark)))
      .map(mark => comparePresent(mark, bags.filter(b => b.marks.has(mark)), bags.filter(b => !b.marks.has(mark)))),
    compareMeasured('thickness', 'from thicker vein', 'from thinner', bags, b => b.width, metres => length(metres, units, 2)),
    compareMeasured('distance from the fault', 'further from the fault', 'nearer to it', bags, b => b.fromFault, metres => length(metres, units, 2)),
    compareMeasured('strength of signals', 'near stronger signals', 'near weaker ones or none', bags, b => b.signal, strength => `${strength} of 10`),
  ]
  const tested = asked.filter(a => a.p !== undefined), raised = holm(tested.map(a => a.p!))
  const of = asked.map(a => told(a, raised[tested.indexOf(a)], tested.length)).sort((a, b) => (a.raised ?? 2) - (b.raised ?? 2) || (a.p ?? 2) - (b.p ?? 2))
  const found = of.filter(a => a.says === 'more gold' || a.says === 'less gold')
  return {
    of, bags: bags.length,
    sentence: found.length > 0 ? found.map(a => a.sentence).join(' ') : `Nothing asked of ${plural(bags.length, 'bag')} stands out: of ${plural(tested.length, 'question')} none passes once all are counted together.`,
    cautions: [
      'what goes together need not cause each other, and where the crew chose to cut is part of it',
      ...of.some(a => a.says === 'not enough to say') ? ['where it says not enough, more bags with and without it would tell'] : [],
    ],
  }
}
