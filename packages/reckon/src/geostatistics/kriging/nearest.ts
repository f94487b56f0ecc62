/**
 * The k samples nearest to a place by plain Euclidean distance (whatever the anisotropy of the model), by looking at every one.
 * Equal distances: the earlier sample first. Order of the result: by distance.
 */
export function nearestPlain(xs: Float64Array, ys: Float64Array, x: number, y: number, k: number, except = -1): Int32Array {
  const d2 = Float64Array.from(xs, (xi, i) => (xi - x) ** 2 + (ys[i]! - y) ** 2)
  const order = Int32Array.from(xs, (_, i) => i).filter(i => i !== except)
  return order.sort((a, b) => d2[a]! - d2[b]! || a - b).slice(0, k)
}
