type Triple = readonly [number, number, number]

/**
 * Even colour for amounts: a curve through OKLab walked in equal steps, lightness falling all the way, so that equal differences in the number
 * look equal, more gold is more ink (on paper) or more light (under the lamp), eyes that do not tell red from green lose nothing, and a grey
 * copy still reads. Numbers stand beside it always.
 * Source: B. Ottosson, 'A perceptual color space for image processing', 2020.
 * @param share  0 to 1; outside is clamped
 * @returns #rrggbb
 */
export const ramp = (share: number, ground: 'day' | 'lamp' | 'print'): string => hex(oklabToRgb(rampLab(share, ground)))

/** The same in OKLab: lightness, green to red, blue to yellow. */
export function rampLab(share: number, ground: 'day' | 'lamp' | 'print'): Triple {
  const walk = walks[ground], far = Math.min(1, Math.max(0, share)) * walk.at(-1)!.far
  const after = Math.max(1, walk.findIndex(p => p.far >= far)), a = walk[after - 1]!, b = walk[after]!
  const t = (far - a.far) / (b.far - a.far)
  return mix(a.lab, b.lab, t)
}

/** Whether writing on this share of the ramp should be the light one. */
export const lightOn = (share: number, ground: 'day' | 'lamp' | 'print'): boolean => ground === 'lamp' ? share < 0.5 : share > 0.45

const mix = (a: Triple, b: Triple, t: number): Triple => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]

// Four points that pull a curve, each inside what a screen can show (tested all along): straw, leaf, sea, night; ember to flame; white to black.
const pulls: Readonly<Record<'day' | 'lamp' | 'print', readonly [Triple, Triple, Triple, Triple]>> = {
  day: [[0.95, -0.015, 0.07], [0.8, -0.1, 0.06], [0.52, -0.06, -0.05], [0.29, 0.02, -0.1]],
  lamp: [[0.2, 0.02, 0.02], [0.38, 0.06, 0.06], [0.56, 0.075, 0.09], [0.76, 0.06, 0.11]],
  print: [[0.96, 0, 0], [0.75, 0, 0], [0.53, 0, 0], [0.32, 0, 0]],
}

interface Step { readonly lab: Triple, readonly far: number }
const walks = { day: walkOf(pulls.day), lamp: walkOf(pulls.lamp), print: walkOf(pulls.print) }

/** A cubic Bezier curve as points with the distance walked, so that colour can be taken at equal steps. */
function walkOf([a, b, c, d]: readonly [Triple, Triple, Triple, Triple]): readonly Step[] {
  const steps: Step[] = []
  for (let i = 0; i <= 200; i++) {
    const t = i / 200, ab = mix(a, b, t), bc = mix(b, c, t), cd = mix(c, d, t), lab = mix(mix(ab, bc, t), mix(bc, cd, t), t), last = steps.at(-1)
    steps.push({ lab, far: last ? last.far + Math.hypot(lab[0] - last.lab[0], lab[1] - last.lab[1], lab[2] - last.lab[2]) : 0 })
  }
  return steps
}

/** OKLab to linear, then to screen sRGB in 0 to 1; not clamped. */
export function oklabToRgb([l, a, b]: Triple): Triple {
  const l3 = (l + 0.3963377774 * a + 0.2158037573 * b) ** 3
  const m3 = (l - 0.1055613458 * a - 0.0638541728 * b) ** 3
  const s3 = (l - 0.0894841775 * a - 1.291485548 * b) ** 3
  return [
    companded(4.0767416621 * l3 - 3.3077115913 * m3 + 0.2309699292 * s3),
    companded(-1.2684380046 * l3 + 2.6097574011 * m3 - 0.3413193965 * s3),
    companded(-0.0041960863 * l3 - 0.7034186147 * m3 + 1.707614701 * s3),
  ]
}

const companded = (c: number): number => c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055
const hex = (rgb: Triple): string => `#${rgb.map(c => Math.round(Math.min(1, Math.max(0, c)) * 255).toString(16).padStart(2, '0')).join('')}`
