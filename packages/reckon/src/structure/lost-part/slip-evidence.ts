import { InputError } from '../../core/index.ts'
import type { Degrees, Enu } from '../../core/index.ts'
import { checkedCovariance } from '../covariance.ts'
import { checkedPoint } from '../spread.ts'
import { length, unit } from '../vector.ts'
import { checkedUnit, notNegative } from './doubtful-plane.ts'
import type { MarkerOffset } from './marker-offset.ts'
import { amountPrior } from './slip-amount.ts'
import type { AmountPrior, SlipAmount } from './slip-amount.ts'

/** Grooves on the fault: a line without a sense. */
export interface Grooves {
  /** Along them, unit length, either end. */
  readonly line: Enu
  /** One standard deviation, in the fault, of the angle between this line and the slip. */
  readonly sigma: Degrees
}

/** 'It moved that way.' */
export interface SlipSense {
  /** The way the far side moved beside the near side; only the part in the fault counts. Any length above zero. */
  readonly toward: Enu
  /** Chance that the slip does lead that way and not the other, [0, 1]. */
  readonly trust: number
}

/** What tells how the far side of a fault moved beside the near side. Everything given is used together. */
export interface SlipEvidence {
  /** The whole slip, with one standard deviation of each component. Taken as it is, in the fault or not. */
  readonly vector?: { readonly slip: Enu, readonly sigma: number }
  readonly grooves?: Grooves
  readonly senses?: readonly SlipSense[]
  readonly markers?: readonly MarkerOffset[]
  /** Not used with `vector`. */
  readonly amount: SlipAmount
}

/** Evidence that has been looked over. */
export interface CheckedEvidence extends Omit<SlipEvidence, 'amount'> {
  readonly senses: readonly SlipSense[]
  readonly markers: readonly MarkerOffset[]
  readonly amount: AmountPrior
}

/** @throws InputError naming the field, such as `evidence.markers[1].looks[0].sigma` */
export function checkedEvidence(evidence: SlipEvidence): CheckedEvidence {
  const { vector, grooves, senses = [], markers = [] } = evidence
  if (vector) {
    checkedPoint(vector.slip, 'evidence.vector.slip')
    notNegative(vector.sigma, 'evidence.vector.sigma')
  }
  return {
    ...(vector ? { vector } : {}),
    ...(grooves ? { grooves: { line: checkedUnit(grooves.line, 'evidence.grooves.line'), sigma: notNegative(grooves.sigma, 'evidence.grooves.sigma') } } : {}),
    senses: senses.map((sense, i) => checkedSense(sense, `evidence.senses[${i}]`)),
    markers: markers.map((marker, i) => checkedMarker(marker, `evidence.markers[${i}]`)),
    amount: amountPrior(evidence.amount, 'evidence.amount'),
  }
}

function checkedSense({ toward, trust }: SlipSense, field: string): SlipSense {
  checkedPoint(toward, `${field}.toward`)
  if (length(toward) === 0) throw new InputError(`${field}.toward`, toward, 'a direction')
  if (!(trust >= 0 && trust <= 1)) throw new InputError(`${field}.trust`, trust, '0 to 1')
  return { toward: unit(toward), trust }
}

function checkedMarker(marker: MarkerOffset, field: string): MarkerOffset {
  if (marker.looks.length === 0) throw new InputError(`${field}.looks`, marker.looks, 'at least one way to read its offset')
  const looks = marker.looks.map((look, k) => {
    const at = `${field}.looks[${k}]`
    if (look.covariance) checkedCovariance(look.covariance, `${at}.covariance`)
    checkedPoint(look.arm, `${at}.arm`)
    if (!Number.isFinite(look.offset)) throw new InputError(`${at}.offset`, look.offset, 'a finite number')
    if (!(Number.isFinite(look.sigma) && look.sigma > 0)) throw new InputError(`${at}.sigma`, look.sigma, 'a doubt above zero: nothing is measured exactly')
    if (!(look.chance >= 0 && look.chance <= 1)) throw new InputError(`${at}.chance`, look.chance, '0 to 1')
    return { ...look, normal: checkedUnit(look.normal, `${at}.normal`) }
  })
  const sum = marker.looks.reduce((total, look) => total + look.chance, 0)
  if (Math.abs(sum - 1) > 1e-6) throw new InputError(`${field}.looks`, sum, 'chances that sum to 1')
  return { ...marker, looks }
}
