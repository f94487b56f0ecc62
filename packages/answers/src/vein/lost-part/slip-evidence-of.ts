import type { FarSide, FittedVein, MarkerOffset, SlipEvidence } from '@lodebook/reckon/structure'
import type { Answer, NotEnough } from '../../answer.ts'
import type { Assume, AssumedFigure } from '../../assumptions.ts'
import { standing } from '../../assumptions.ts'
import { buildAnswer } from '../../build-answer.ts'
import { textOf } from '../../read.ts'
import type { North } from '../../survey/north.ts'
import { length, plural } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import type { FaultPlane } from '../fault.ts'
import type { Sited } from '../vein-data.ts'
import { groovesOn } from './grooves.ts'
import { markersAcross, veinBeyond } from './markers.ts'
import { piercingPoints } from './piercing.ts'
import { sensesOn } from './senses.ts'
import { slipLength } from './slip-length.ts'

export interface EvidenceInput {
  readonly vein: FittedVein
  readonly veinName: string
  readonly fault: FaultPlane
  readonly far: FarSide
  readonly structures: readonly Sited[]
  /** Places of the vein itself beyond the fault. */
  readonly beyond: readonly Sited[]
  readonly north: North
  readonly assume: Assume
  readonly units: CrewUnits
}

export interface EvidenceFound {
  readonly evidence: SlipEvidence
  readonly answers: readonly Answer<unknown>[]
  /** What is assumed of the slip's length; undefined where the crew wrote it or piercing points tell the whole slip. */
  readonly amount: AssumedFigure | undefined
  /** What there is, in a few words. */
  readonly rests: string
  /** What is missing, the most telling first. */
  readonly wanted: NotEnough['wanted']
  /** Nothing at all tells how the fault moved. */
  readonly none: boolean
}

const wants = {
  marker: { kind: 'structure', why: 'a contact, dyke or other vein read under one name on both sides of the fault tells how far the fault moved' },
  second: { kind: 'structure', why: 'a second contact or dyke that runs another way, read on both sides, settles the movement' },
  grooves: { kind: 'structure', why: 'the rake of grooves (striae) on the fault tells the line it moved along' },
  pierced: { kind: 'structure', why: 'one line seen to come to the fault on both sides (where two veins meet, the edge of a shoot), read as a piercing point, tells the whole slip' },
  sense: { kind: 'structure', why: 'steps or drag on the fault tell its sense: normal, reverse, left or right' },
} as const

/** All that the book says of how the fault moved. */
export function slipEvidenceOf({ vein, veinName, fault, far, structures, beyond, north, assume, units }: EvidenceInput): EvidenceFound {
  const onFault = structures.filter(({ entry }) => ['fault', 'striae'].includes(textOf(entry, 'feature')!) && (textOf(entry, 'name') ?? fault.name) === fault.name)
  const grooves = groovesOn(fault.plane, onFault.filter(({ entry }) => textOf(entry, 'feature') === 'striae'), north, assume('grooves off the slip'))
  const senses = sensesOn(fault.plane, far, onFault, assume('sense of slip right'))
  const markers = markersAcross({ fault: fault.plane, far, structures, vein: veinName, north, units })
  const again = veinBeyond(vein, beyond)
  const pierced = piercingPoints({ fault: fault.plane, far, structures, north, units })
  const written = slipLength(onFault, units)
  const amount = assume('slip of the fault')
  const offsets: readonly MarkerOffset[] = [...markers.map(m => m.marker), ...(again ? [again] : [])]
  return {
    rests: listed([
      ...(pierced ? ['piercing points'] : []), ...(written ? ['the length of the slip as written'] : []), ...(grooves ? ['grooves'] : []), ...(senses ? ['sense'] : []),
      ...(markers.length === 0 ? [] : [markers.length === 1 ? 'one marker' : `${markers.length} markers`]), ...(again ? ['the vein found again'] : []),
    ]),
    amount: pierced || written ? undefined : amount,
    evidence: {
      ...(pierced ? { vector: pierced.vector } : {}), ...(grooves ? { grooves: grooves.grooves } : {}), senses: senses?.senses ?? [], markers: offsets,
      amount: written?.amount ?? usable(amount),
    },
    answers: [
      ...(pierced ? [pierced.answer] : []), ...(written ? [written.answer] : []),
      ...(grooves ? [grooves.answer] : []), ...(senses ? [senses.answer] : []),
      ...markers.map(m => m.answer), ...(again ? [againAnswer(veinName, again, beyond, units)] : []),
    ],
    wanted: [
      ...(pierced ? [] : [
        ...(markers.length === 0 && !written ? [wants.marker] : []), ...(grooves ? [] : [wants.grooves]), ...(senses ? [] : [wants.sense]),
        ...(markers.length === 1 ? [wants.second] : []), ...(markers.length > 1 ? [] : [wants.pierced]),
      ]),
    ],
    none: !pierced && !grooves && !senses && offsets.length === 0,
  }
}

const listed = (words: readonly string[]): string => words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`

/** A prior must have a length above zero and its limits the right way round; else ours stands. */
function usable({ low, high }: AssumedFigure): SlipEvidence['amount'] {
  const ours = standing['slip of the fault']
  return low > 0 && high >= low && Number.isFinite(high) ? { low, high } : { low: ours.low, high: ours.high }
}

function againAnswer(name: string, { looks }: MarkerOffset, beyond: readonly Sited[], units: CrewUnits): Answer {
  const { offset, sigma } = looks[0]!
  return buildAnswer({
    id: 'lost-part.again', value: offset, unit: 'm',
    sentence: `${name} was found again past the fault in ${plural(beyond.length, 'place')}, ${length(Math.abs(offset), units)} from where it would run on (±${length(sigma, units, 2)}).`,
    range: { low: offset - 1.2816 * sigma, high: offset + 1.2816 * sigma, confidence: 0.8, because: ['where it was touched', 'the vein\'s own swing'] },
    method: { name: 'offset of a marker', page: 'lost-part' }, from: beyond.map(s => s.entry.id),
  })
}
