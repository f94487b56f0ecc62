import { enlargedBy, movedBy, turnedBy } from './camera.ts'
import type { Camera } from './camera.ts'

const ways: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }

/** What a key does to the camera: arrows turn, with Shift they move, plus and minus enlarge and reduce; undefined for any other. */
export function keyTurn(camera: Camera, key: string, shift: boolean): Camera | undefined {
  const way = ways[key]
  if (way) return shift ? movedBy(camera, way[0] * 50, way[1] * 50) : turnedBy(camera, -way[0] * 10, -way[1] * 10)
  if (key === '+' || key === '=') return enlargedBy(camera, 1.35)
  if (key === '-') return enlargedBy(camera, 1 / 1.35)
  return undefined
}
