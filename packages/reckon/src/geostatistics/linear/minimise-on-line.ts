/** Golden section: the smaller part of a cut line over the larger. */
const GOLDEN = (3 - Math.sqrt(5)) / 2

/**
 * The least value of a function on a line: looks at every given place, then refines each hollow between neighbours
 * by Brent's method (parabolas, golden section where they fail).
 *
 * @param f  a continuous function
 * @param looks  places to look at, two or more, any order; the search stays within their span; not modified
 * @returns the place of the least value found. Accuracy about 1e-8 of the span, as for any method that only compares values.
 * Source: Brent, R. P. (1973) Algorithms for minimization without derivatives, ch. 5.
 */
export function minimiseOnLine(f: (x: number) => number, looks: readonly number[]): number {
  const xs = [...looks].sort((a, b) => a - b)
  const values = xs.map(f)
  let best = 0
  values.forEach((value, i) => { if (value < values[best]!) best = i })
  let result = { x: xs[best]!, value: values[best]! }
  for (let i = 0; i < xs.length; i++) {
    const hollow = values[i]! <= (values[i - 1] ?? Infinity) && values[i]! <= (values[i + 1] ?? Infinity)
    if (!hollow) continue
    const found = brent(f, xs[Math.max(i - 1, 0)]!, xs[i]!, xs[Math.min(i + 1, xs.length - 1)]!, values[i]!)
    if (found.value < result.value) result = found
  }
  return result.x
}

/** Brent's minimisation within [low, high] from a place between them. */
function brent(f: (x: number) => number, low: number, start: number, high: number, startValue: number): { x: number, value: number } {
  let [a, b] = [low, high]
  let [x, w, v] = [start, start, start]
  let [fx, fw, fv] = [startValue, startValue, startValue]
  let step = 0
  let last = 0
  const tolerance = 1e-10 * (high - low)
  for (let turn = 0; turn < 200; turn++) {
    const middle = (a + b) / 2
    const close = 1e-9 * Math.abs(x) + tolerance
    if (Math.abs(x - middle) <= 2 * close - (b - a) / 2) break
    let golden = true
    if (Math.abs(last) > close) {
      const r = (x - w) * (fx - fv)
      let q = (x - v) * (fx - fw)
      let p = (x - v) * q - (x - w) * r
      q = 2 * (q - r)
      if (q > 0) p = -p; else q = -q
      if (Math.abs(p) < Math.abs(0.5 * q * last) && p > q * (a - x) && p < q * (b - x)) {
        last = step
        step = p / q
        golden = false
        if (x + step - a < 2 * close || b - x - step < 2 * close) step = x < middle ? close : -close
      }
    }
    if (golden) {
      last = (x < middle ? b : a) - x
      step = GOLDEN * last
    }
    const u = x + (Math.abs(step) >= close ? step : step > 0 ? close : -close)
    const fu = f(u)
    if (fu <= fx) {
      if (u < x) b = x; else a = x;
      [v, w, x] = [w, x, u];
      [fv, fw, fx] = [fw, fx, fu]
    } else {
      if (u < x) a = u; else b = u
      if (fu <= fw || w === x) {
        [v, w] = [w, u];
        [fv, fw] = [fw, fu]
      } else if (fu <= fv || v === x || v === w) {
        v = u
        fv = fu
      }
    }
  }
  return { x, value: fx }
}
