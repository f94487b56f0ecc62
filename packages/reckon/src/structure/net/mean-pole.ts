import { DegenerateError } from '../../core/index.ts'
import { checkedLine, directionOf, lineOf, vectorOf } from '../line.ts'
import type { Line } from '../line.ts'
import { directionMean } from '../direction-mean.ts'
import type { DirectionMean } from '../direction-mean.ts'
import { orientationTensor } from '../orientation-tensor.ts'
import { dot, scaled } from '../vector.ts'

/**
 * Mean of lines without a sense that lie in one cluster, with Fisher's concentration and 95 % cone: each is turned to the end nearest to the
 * main axis of them all, then averaged as a direction. The mean is given by its lower end.
 * @throws DegenerateError("too few" | "no mean direction") for fewer than two, or lines spread over more than half the sphere; InputError
 */
export function meanPole(lines: readonly Line[]): DirectionMean {
  if (lines.length < 2) throw new DegenerateError('too few', 'lines', lines.length, 'two or more lines')
  const axis = vectorOf(orientationTensor(lines).axes[0])
  const turned = lines.map((line, i) => {
    const v = vectorOf(checkedLine(line, `lines[${i}]`))
    return dot(v, axis) < 0 ? scaled(v, -1) : v
  })
  const mean = directionMean(turned.map(directionOf))
  return { ...mean, ...lineOf(vectorOf(mean)) }
}
