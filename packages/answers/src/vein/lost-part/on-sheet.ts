import type { Enu } from '@lodebook/reckon'
import { edgesOn, fromSheet, onSheet, planeOnSheet, stretchOf, traceBand, tracesOn } from '@lodebook/reckon/structure'
import type { LostPartFamily, Sheet, SheetLine, SheetPoint, VeinFrame } from '@lodebook/reckon/structure'
import type { LostOnSheet, LostPart, LostPlane } from '../../shapes.ts'

/** What is drawn: the cases, and the planes that are known. */
export type LostDrawn = Pick<LostPart, 'family' | 'known'>

/**
 * Where a lost part may run on any sheet, as the plan and the cross section of the answer show it.
 * @param around  a grid point in the middle of what is wanted, and how far either way, metres
 */
export function lostPartOn({ family, known }: LostDrawn, sheet: Sheet, around: { readonly point: Enu, readonly reach: number }): LostOnSheet {
  const window = { centre: onSheet(sheet, around.point), reach: around.reach }
  const lift = (points: readonly SheetPoint[]) => points.map(p => fromSheet(sheet, p))
  const both = ([a, b]: readonly [SheetPoint, SheetPoint]): readonly [Enu, Enu] => [fromSheet(sheet, a), fromSheet(sheet, b)]
  const shown = (line: SheetLine | undefined) => { const part = line && stretchOf(line, window); return part && both(part) }
  const band = traceBand(tracesOn(family, sheet), window)
  return {
    origin: sheet.origin, across: sheet.across, up: sheet.up,
    here: shown(tracesOn(knownPart(known, family), sheet)[0]), fault: shown(planeOnSheet(sheet, known.fault)),
    band: band && { low: lift(band.low), middle: lift(band.middle), high: lift(band.high) },
    cases: band ? band.cases.map(both) : [],
  }
}

/** The edge of the lost part seen square to the vein, in the vein's coordinates. */
export function lostEdge(family: LostPartFamily, frame: VeinFrame, around: { readonly point: Enu, readonly reach: number }): LostPart['edge'] {
  const sheet: Sheet = { origin: frame.origin, across: frame.strike, up: frame.dip }
  const band = traceBand(edgesOn(family, sheet), { centre: onSheet(sheet, around.point), reach: around.reach })
  const place = ([along, down]: SheetPoint) => ({ along, down })
  return band && {
    low: band.low.map(place), middle: band.middle.map(place), high: band.high.map(place),
    cases: band.cases.map(([a, b]) => [place(a), place(b)] as const),
  }
}

/** The known part as a family of one that lies on the other side of the fault. */
function knownPart({ vein, fault }: { readonly vein: LostPlane, readonly fault: LostPlane }, { far }: LostPartFamily): LostPartFamily {
  return { draws: [{ slip: [0, 0, 0], apart: 0, ...vein, fault }], far: far === 1 ? -1 : 1, tried: 1, effective: 1, misfit: 0 }
}
