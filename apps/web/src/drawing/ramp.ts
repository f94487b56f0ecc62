type Triple = readonly [number, number, number]

/**
 * Even colour for amounts. Steps are equal in OKLab lightness and follow one curve of hue, so that equal differences in the number look
 * equal, more gold is more ink (on paper) or more light (under the lamp), and a grey copy still reads. Numbers stand beside it always.
 * Source: B. Ottosson, 'A perceptual color space for image processing', 2020.
 * @param share  0 to 1; outside is clamped
 * @returns #rrggbb
 */
export function ramp(share: number, ground: 'day' | 'lamp' | 'print'): string {
  const t = Math.min(1, Math.max(0, share))
  const [from, to] = ends[ground]
  return hex(oklabToRgb([from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t]))
}

/** Whether writing on this share of the ramp should be the light one. */
export const lightOn = (share: number, ground: 'day' | 'lamp' | 'print'): boolean => ground === 'lamp' ? share < 0.5 : share > 0.45

// Lightness, green-red, blue-yellow at the ends. Straight lines in OKLab, inside what a screen can show all the way (tested).
const ends: Readonly<Record<'day' | 'lamp' | 'print', readonly [Triple, Triple]>> = {
  day: [[0.94, -0.012, 0.05], [0.3, 0.055, -0.045]],
  lamp: [[0.2, 0.02, 0.02], [0.74, 0.07, 0.1]],
  print: [[0.96, 0, 0], [0.32, 0, 0]],
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
