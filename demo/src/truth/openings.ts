import type { VeinPoint } from '@lodebook/reckon'
import { inside, type Outline } from './ounces.ts'
import type { Vein } from './vein.ts'
import { dot, minus } from './vectors.ts'
import type { Working } from './working.ts'

/** What the old workers took out of the vein by driving along it: the outline of each drift, raise and winze on the vein. */
export function openingsOf(vein: Vein, workings: readonly Working[]): readonly Outline[] {
  return workings.flatMap(({ sort, onVein, path, width, height }): Outline[] => {
    const alongs = path.points.map(p => dot(minus(p, vein.origin), vein.alongAxis))
    if (onVein) {
      const edge = (above: number) => path.points.map((p, i) => vein.atLevel(alongs[i]!, p[2] + above))
      return [[...edge(0), ...edge(height).reverse()]]
    }
    if (sort !== 'raise' && sort !== 'winze') return []
    const side = (aside: number) => path.points.map((p, i): VeinPoint => ({ along: alongs[i]! + aside, down: dot(minus(p, vein.origin), vein.downAxis) }))
    return [[...side(-width / 2), ...side(width / 2).reverse()]]
  })
}

/** Whether a point lies inside any of the outlines. */
export function insideAny(outlines: readonly Outline[]): (p: VeinPoint) => boolean {
  const boxed = outlines.map(outline => ({
    outline, left: Math.min(...outline.map(p => p.along)), right: Math.max(...outline.map(p => p.along)),
    top: Math.min(...outline.map(p => p.down)), bottom: Math.max(...outline.map(p => p.down)),
  }))
  return p => boxed.some(b => p.along >= b.left && p.along <= b.right && p.down >= b.top && p.down <= b.bottom && inside(p, b.outline))
}
