/** Nodes in (0, 1) and weights of the ten-point rule on [-1, 1]; the rule is symmetric. Abramowitz and Stegun, table 25.4. */
const nodes = [0.14887433898163122, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717]
const weights = [0.29552422471475287, 0.26926671930999635, 0.21908636251598204, 0.1494513491505806, 0.06667134430868814]

/** Integral of a smooth function over [from, to], in panels of a stated width or less; ten points a panel. */
export function integral(f: (x: number) => number, from: number, to: number, panel: number): number {
  if (!(to > from)) return 0
  const panels = Math.max(1, Math.ceil((to - from) / panel))
  const half = (to - from) / panels / 2
  let sum = 0
  for (let k = 0; k < panels; k++) {
    const middle = from + (2 * k + 1) * half
    for (let i = 0; i < nodes.length; i++) sum += weights[i]! * (f(middle - half * nodes[i]!) + f(middle + half * nodes[i]!))
  }
  return sum * half
}
