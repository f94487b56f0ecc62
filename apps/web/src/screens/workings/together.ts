import { fit } from '../../drawing/view.ts'
import type { View } from '../../drawing/view.ts'
import type { Size } from '../../drawing/use-size.ts'
import type { SheetModel } from './sheet.ts'

/** Room kept free round a drawing, pixels; less on a phone. */
export const insetFor = (width: number): number => width < 600 ? 30 : 46

/** How high a plan may be, as a share of the window; the section gets what it needs at the same scale. */
const planShare = 0.66

/** The heights at which plan and section, at one scale, fill the width they have without the plan running out of the window. Pixels. */
export function heightsFor({ plan, section }: SheetModel, width: number, windowHeight: number): { readonly plan: number, readonly section: number } {
  const inset = insetFor(width), wide = Math.max(plan.maxX - plan.minX, section.maxX - section.minX, 5), high = Math.max(plan.maxY - plan.minY, 5)
  const k = Math.min((width - 2 * inset) / wide, (windowHeight * planShare - 2 * inset) / high)
  const need = (metres: number) => Math.round(Math.min(Math.max(metres * k + 2 * inset, 200), windowHeight * 0.75))
  return { plan: need(high), section: need(section.maxY - section.minY) }
}

/** Plan and section at the one scale at which both show all of theirs. */
export function fitTogether(model: SheetModel, plan: Size, section: Size): { readonly plan: View, readonly section: View } {
  const inset = insetFor(plan.width), a = fit(model.plan, plan.width, plan.height, inset), b = fit(model.section, section.width, section.height, inset)
  const k = Math.min(a.k, b.k)
  return { plan: atScale(a, k, plan), section: atScale(b, k, section) }
}

/** The same middle at another scale. */
function atScale(view: View, k: number, { width, height }: Size): View {
  const times = k / view.k
  return { k, x: width / 2 + (view.x - width / 2) * times, y: height / 2 + (view.y - height / 2) * times }
}

/**
 * The other view, after one has been moved or enlarged: the same scale, and the same distance along when they stand under each other; what
 * was half-way up it stays there.
 */
export function follow(lead: View, other: View, height: number, aligned: boolean): View {
  const times = lead.k / other.k
  return { k: lead.k, x: aligned ? lead.x : other.x * times, y: height / 2 + (other.y - height / 2) * times }
}
