import { finite, InputError, positive } from '../core/index.ts'

export interface FanDuctInput {
  /** What the fan moves with nothing in its way, m3/s. */
  readonly freeFlowM3S: number
  /** Its pressure with the outlet shut, Pa. */
  readonly shutPressurePa: number
  readonly ductDiameterM: number
  readonly ductLengthM: number
  /** Length of one piece, metres. */
  readonly pieceM?: number
  /** Open gap of one joint as a share of the duct's section: 0 tight. */
  readonly gap?: number
  /** Atkinson k of the duct; 0.0037 when left out. */
  readonly frictionKgM3?: number
}

export interface FanDuct {
  readonly fanFlowM3S: number
  readonly faceFlowM3S: number
  readonly fanPressurePa: number
  /** Share of what the fan moves that is lost on the way. */
  readonly lost: number
  readonly cautions: readonly string[]
}

/** Gaps of joints as a share of the duct's section. Common practice, no source; the crew's own measure at both ends counts for more. */
export const jointGaps = { tight: 0.0005, usual: 0.003, loose: 0.012 } as const
/** Flexible duct, stretched: from memory (McPherson, ch. 5). */
const flexible = 0.0037
const density = 1.2
/** Flow through a sharp gap: Cd of an orifice. */
const orifice = 0.6

/**
 * What a small fan delivers at the end of a leaking duct.
 *
 * From the face back to the fan, piece by piece: pressure grows by friction and each joint lets out Cd A sqrt(2p/rho). The flow at the face is
 * found at which the fan's curve, p = shut (1 - (Q/free)2), meets the duct.
 * @throws InputError for sizes that are not above zero or a negative gap
 * Source: Atkinson's equation and orifice flow; the fan's curve is a parabola through its two ends, where no curve is known.
 */
export function fanDuct({ freeFlowM3S, shutPressurePa, ductDiameterM, ductLengthM, pieceM = 10, gap = jointGaps.usual,
  frictionKgM3 = flexible }: FanDuctInput): FanDuct {
  const sizes = { free_flow_m3_s: freeFlowM3S, shut_pressure_Pa: shutPressurePa, duct_diameter_m: ductDiameterM, duct_length_m: ductLengthM,
    piece_m: pieceM, friction_kg_m3: frictionKgM3 }
  for (const [field, value] of Object.entries(sizes)) positive(value, field)
  if (finite(gap, 'gap') < 0) throw new InputError('gap', gap, 'zero or more')
  const area = Math.PI * ductDiameterM ** 2 / 4, pieces = Math.max(1, Math.round(ductLengthM / pieceM)), each = ductLengthM / pieces
  const r = frictionKgM3 * each * Math.PI * ductDiameterM / area ** 3
  const back = (face: number): { flow: number, pressure: number } => {
    let flow = face, pressure = density / 2 * (face / area) ** 2
    for (let i = 0; i < pieces; i++) {
      pressure += r * flow * flow
      flow += orifice * gap * area * Math.sqrt(2 * pressure / density)
    }
    return { flow, pressure }
  }
  let [low, high] = [0, freeFlowM3S]
  for (let i = 0; i < 200 && high - low > 1e-13 * freeFlowM3S; i++) {
    const middle = (low + high) / 2, { flow, pressure } = back(middle)
    if (pressure > shutPressurePa * (1 - (flow / freeFlowM3S) ** 2)) high = middle; else low = middle
  }
  const { flow, pressure } = back(low)
  return {
    fanFlowM3S: flow, faceFlowM3S: low, fanPressurePa: pressure, lost: flow > 0 ? 1 - low / flow : 0,
    cautions: ['Measure it: bag or vane at the end of the duct. Bends, flat places and holes are not in it. Blow fresh air in from well outside the portal, never from beside an engine.'],
  }
}
