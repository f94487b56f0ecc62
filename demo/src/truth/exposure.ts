import type { Enu, VeinPoint } from '@lodebook/reckon'
import { onSection, type Section } from './section.ts'
import type { Vein } from './vein.ts'

/** Where the vein shows in a section, as the crew would describe it. */
export interface Exposure {
  readonly section: Section
  readonly side: 'back' | 'left rib' | 'right rib'
  /** Above the sill, metres; for the back, how high the back is. */
  readonly height: number
  readonly point: Enu
  readonly vein: VeinPoint
}

/** Every place where the vein crosses the back or a rib of a section; none where the working has left the vein. */
export function exposures(vein: Vein, section: Section): Exposure[] {
  const { left, right, up, down } = section.offsets, top = up + down
  const found: Exposure[] = []
  const look = (side: Exposure['side'], from: readonly [number, number], to: readonly [number, number]) => {
    const share = crossing(s => vein.toVein(onSection(section, from[0] + (to[0] - from[0]) * s, from[1] + (to[1] - from[1]) * s)).off)
    if (share === undefined) return
    const height = from[1] + (to[1] - from[1]) * share, point = onSection(section, from[0] + (to[0] - from[0]) * share, height)
    const { along, down: dip } = vein.toVein(point)
    found.push({ section, side, height, point, vein: { along, down: dip } })
  }
  look('back', [-left, top], [right, top])
  look('left rib', [-left, 0.1], [-left, top])
  look('right rib', [right, 0.1], [right, top])
  return found
}

/** In a raise or a winze, which lies in the vein, both ribs show it. */
export function raiseExposure(vein: Vein, section: Section, side: 'left rib' | 'right rib'): Exposure {
  const point = onSection(section, side === 'left rib' ? -section.offsets.left : section.offsets.right, section.offsets.down)
  const { along, down } = vein.toVein(point), at = { along, down }
  return { section, side, height: section.offsets.down, point: vein.at(at), vein: at }
}

/**
 * Share in [0, 1] at which a function changes sign; undefined when it doesn't. By the chord: the vein is so nearly flat over a heading's
 * width that five chords are good to far less than a millimetre.
 */
function crossing(f: (share: number) => number): number | undefined {
  let low = 0, high = 1, below = f(0), above = f(1), at = 0.5
  if (below * above > 0) return undefined
  for (let i = 0; i < 5; i++) {
    at = low + (high - low) * below / (below - above)
    const here = f(at)
    if (here * below > 0) { low = at; below = here } else { high = at; above = here }
  }
  return at
}
