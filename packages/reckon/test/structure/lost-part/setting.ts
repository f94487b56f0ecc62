import type { Enu } from '../../../src/core/index.ts'
import { axesOf } from '../../../src/structure/index.ts'
import type { Attitude, DoubtfulPlane, LostPartFamily, LostPartInput } from '../../../src/structure/index.ts'
import { add, cross, dot, scaled, subtract } from '../../../src/structure/vector.ts'

export { add, cross, dot, scaled, subtract }

export const deepFreeze = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value)
    Object.values(value).forEach(deepFreeze)
  }
  return value
}

export const exactly = (attitude: Attitude, point: Enu = [0, 0, 0]): DoubtfulPlane => ({ normal: axesOf(attitude).normal, point })

/** A vein 040/70 cut at the origin by a fault 110/60; lost on the footwall side of the fault. */
export const vein = exactly({ strike: 40, dip: 70 })
export const fault = exactly({ strike: 110, dip: 60 })
export const faultAxes = axesOf({ strike: 110, dip: 60 })
export const setting = { vein, fault, far: -1, seed: 11 } as const satisfies Partial<LostPartInput>
export const amount = { low: 1, high: 25 }

/** A slip in the fault by its rake from the strike direction, degrees, and its length. */
export const slipAt = (rake: number, size: number): Enu => {
  const turn = rake * Math.PI / 180
  return add(scaled(faultAxes.strike, size * Math.cos(turn)), scaled(faultAxes.dip, size * Math.sin(turn)))
}

export const apartOf = ({ draws }: LostPartFamily): readonly number[] => draws.map(draw => draw.apart)

/** Turns vectors by a right-handed turn about an axis (Rodrigues). */
export const turner = (axis: Enu, degrees: number) => (v: Enu): Enu => {
  const turn = degrees * Math.PI / 180
  const k = scaled(axis, 1 / Math.hypot(...axis))
  return add(add(scaled(v, Math.cos(turn)), scaled(cross(k, v), Math.sin(turn))), scaled(k, dot(k, v) * (1 - Math.cos(turn))))
}
