import { finite, InputError, positive } from '../core/index.ts'

export interface Traverse {
  /** m3/s. */
  readonly flowM3S: number
  readonly meanSpeedMS: number
  /** One standard error of the flow from how the points differ; undefined for one point. */
  readonly sigmaM3S: number | undefined
  readonly cautions: readonly string[]
}

/** A reading in the middle of a heading is faster than the mean by about this. Common practice; from memory. */
export const middleToMean = 0.8

/**
 * Air flow from speeds read over a section: mean of the speeds times the area. Equal parts of the section, one reading in the middle of each;
 * or the hand moved at an even pace over all of it, which gives one mean.
 * @param speedsMS  m/s, one for each equal part; a single reading taken in the middle of the heading is multiplied by 0.8
 * @throws InputError for no speeds, a speed below zero or an area that is not above zero
 * Source: moving and fixed-point traverse, common practice (McPherson, Subsurface Ventilation Engineering, ch. 6, from memory).
 */
export function traverse(speedsMS: readonly number[], areaM2: number): Traverse {
  positive(areaM2, 'area_m2', 'square metres above zero')
  if (speedsMS.length === 0) throw new InputError('speeds_m_s', speedsMS, 'one speed or more')
  speedsMS.forEach((v, i) => { if (finite(v, `speeds_m_s[${i}]`) < 0) throw new InputError(`speeds_m_s[${i}]`, v, 'zero or more; which way it moves is written apart') })
  const n = speedsMS.length, mean = speedsMS.reduce((a, b) => a + b, 0) / n * (n === 1 ? middleToMean : 1)
  const sigma = n < 2 ? undefined : Math.sqrt(speedsMS.reduce((s, v) => s + (v - mean) ** 2, 0) / (n - 1) / n) * areaM2
  return {
    flowM3S: mean * areaM2, meanSpeedMS: mean, sigmaM3S: sigma,
    cautions: [
      ...n === 1 ? ['One reading, taken as made in the middle of the heading and brought to the mean by 0.8. Nine points, or the hand moved evenly over the whole section, tell more.'] : [],
      'Stand aside of the section and hold the instrument at arm\'s length: a body in a small heading speeds the air beside it. Below about 0.2 m/s use smoke over a taped length.',
    ],
  }
}

/**
 * Speed of slow air from smoke timed over a taped length. The front of a puff moves faster than the mean.
 * @throws InputError for a length or a time that is not above zero
 */
export const smokeSpeed = (lengthM: number, seconds: number): number =>
  middleToMean * positive(lengthM, 'length_m') / positive(seconds, 'seconds')
