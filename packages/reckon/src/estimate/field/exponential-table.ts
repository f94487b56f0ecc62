/** Steps to one range; between them the curve is taken straight, which is off by less than 2e-6 of the sill. */
const perRange = 256
/** Correlation further than this many ranges apart is below 1e-9 and taken as none. */
const ranges = 21

/** exp(-h / range) looked up: some four times as fast as Math.exp. Error below 2e-6. */
export class ExponentialTable {
  private readonly values = Float64Array.from({ length: perRange * ranges + 2 }, (_, i) => Math.exp(-i / perRange))
  private readonly scale: number

  constructor(readonly range: number) { this.scale = perRange / range }

  /** Correlation of two places (dx, dy) apart. */
  at(dx: number, dy: number): number {
    const u = Math.sqrt(dx * dx + dy * dy) * this.scale
    if (!(u < perRange * ranges)) return 0
    const i = u | 0
    const low = this.values[i]!
    return low + (u - i) * (this.values[i + 1]! - low)
  }
}
