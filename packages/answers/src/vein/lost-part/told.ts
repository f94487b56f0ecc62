import type { Enu } from '@lodebook/reckon'
import { axesOf, dipDirectionOf, whatItTells } from '@lodebook/reckon/structure'
import type { FittedVein, LostPartFamily, Separation } from '@lodebook/reckon/structure'
import type { LostPart } from '../../shapes.ts'
import { azimuth, figure, length } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import { dot } from '../vein-data.ts'

/** Below this dip a vein is flat: what lies past the fault is then above or below, not left or right. Degrees. */
const flatBelow = 30

/** A family of continuations in the crew's terms. */
export interface Told {
  /** Level across a steep vein, or upright on a flat one. */
  readonly separation: Separation
  readonly flat: boolean
  readonly hand: LostPart['hand']
  readonly handChance: number
  readonly sentence: string
}

/**
 * Says where the lost part lies as one sees it who goes along the vein towards the fault.
 * @param between  names of vein and fault
 */
export function tellFamily(
  family: LostPartFamily, vein: FittedVein, fault: FittedVein, between: { readonly vein: string, readonly fault: string }, units: CrewUnits,
): Told {
  const flat = vein.dip < flatBelow
  const tilt = vein.dip * Math.PI / 180
  const stretch = 1 / (flat ? Math.cos(tilt) : Math.sin(tilt))
  const separation = whatItTells(family.draws.map(draw => draw.apart * stretch))
  const { strike } = axesOf(vein)
  const withStrike = family.far * dot(fault.normal, strike) >= 0
  const handOf = (up: boolean): LostPart['hand'] => flat ? up ? 'above' : 'below' : up === withStrike ? 'right' : 'left'
  const up = separation.median > 0
  const hand = handOf(up)
  const handChance = up ? separation.chanceUp : 1 - separation.chanceUp
  const bearing = dipDirectionOf(vein.strike) + (up ? 0 : 180)
  const side = (h: LostPart['hand']) => flat ? h : `to the ${h}`
  const toward = flat ? hand : `${side(hand)} (towards ${azimuth(bearing)})`
  const how = flat ? 'upright' : 'measured level across it'
  const [near, far] = [Math.min(Math.abs(separation.low), Math.abs(separation.high)), Math.max(Math.abs(separation.low), Math.abs(separation.high))]
  const [veinNamed, faultNamed] = [named(between.vein, /vein|lode|reef/i, 'vein'), named(between.fault, /fault|slip/i, 'fault')]
  const past = `Past ${faultNamed} ${veinNamed}`
  const sentence = separation.tells === 'where'
    ? `${past} goes on ${length(Math.abs(separation.median), units, 2)} ${toward}, ${how}; four in five between ${length(near, units, 2)} and ${length(far, units, 2)}.`
    : separation.tells === 'which hand'
      ? `${past} goes on ${toward}, but the evidence cannot tell how far: four in five between ${length(near, units, 2)} and ${length(far, units, 2)}, ${how}.`
      : `The evidence cannot tell on which hand ${veinNamed} goes on past ${faultNamed}: ${figure(100 * handChance, 2)} chances in 100 that it is ${side(hand)}; four in five between ${length(Math.abs(separation.low), units, 2)} ${side(handOf(false))} and ${length(Math.abs(separation.high), units, 2)} ${side(handOf(true))}.`
  return { separation, flat, hand, handChance, sentence }
}

/** 'the Lantern vein' from 'Lantern vein', 'the vein Main' from 'Main'. */
export const named = (name: string, kind: RegExp, word: string): string =>
  /^the /i.test(name) ? name : kind.test(name) ? `the ${name}` : `the ${word} ${name}`

/** The plane's normal and a point of it. */
export const planeOf = ({ normal, centroid }: FittedVein): { readonly normal: Enu, readonly point: Enu } => ({ normal, point: centroid })
