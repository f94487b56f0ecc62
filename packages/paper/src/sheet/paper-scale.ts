/** A sheet of paper laid across, millimetres. */
export const a4 = { width: 297, height: 210 } as const
/** Free edge, and the margin at the right that carries title, scale and norths. */
export const edge = 8
export const marginWide = 58

const drafting = [20, 25, 50, 100, 200, 250, 500, 1000, 1250, 2000, 2500, 5000, 10_000, 25_000, 50_000]

/** The largest drafting scale (one to so many) at which so many metres go into so many millimetres; the smallest there is when none does. */
export const fittingScale = (wide: number, high: number, roomWide: number, roomHigh: number): number =>
  drafting.find(scale => wide * 1000 / scale <= roomWide && high * 1000 / scale <= roomHigh) ?? drafting.at(-1)!

/** Millimetres on paper of so many metres at one to `scale`: exact, one division. */
export const onPaper = (metres: number, scale: number): number => metres * 1000 / scale
