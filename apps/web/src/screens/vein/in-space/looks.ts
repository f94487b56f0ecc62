import type { Camera, Room } from './camera.ts'

/** Colours of the ground that is set, read from the sheet's own styles. */
export interface Looks {
  readonly ink: string
  readonly soft: string
  readonly sheet: string
  readonly wall: string
  readonly quartz: string
  readonly accent: string
  readonly hatch: string
}

export function looksOf(element: Element): Looks {
  const style = getComputedStyle(element), of = (name: string) => style.getPropertyValue(name).trim()
  return { ink: of('--ink'), soft: of('--soft'), sheet: of('--sheet'), wall: of('--void'), quartz: of('--quartz'), accent: of('--accent'), hatch: of('--hatch') }
}

/** One way of putting a scene on a canvas. */
export interface Painter {
  /** Draws the scene as the camera sees it. */
  readonly paint: (camera: Camera, room: Room) => void
  readonly end: () => void
  readonly how: 'solid' | 'drawn'
}
