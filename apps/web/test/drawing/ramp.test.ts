import { expect, it } from 'vitest'
import { oklabToRgb, ramp, rampLab } from '../../src/drawing/ramp.ts'

const shares = Array.from({ length: 51 }, (_, i) => i / 50)

it('OKLab white, and the primaries of sRGB, come back as themselves', () => {
  // The primaries in OKLab as given with the definition: B. Ottosson, 'A perceptual color space for image processing', 2020 (status M: from memory).
  const near = (lab: readonly [number, number, number], rgb: readonly number[]) =>
    oklabToRgb(lab).forEach((c, i) => expect(Math.abs(c - rgb[i]!)).toBeLessThan(0.004))
  near([1, 0, 0], [1, 1, 1])
  near([0.627955, 0.224863, 0.125846], [1, 0, 0])
  near([0.86644, -0.233888, 0.179498], [0, 1, 0])
  near([0.452014, -0.032457, -0.311528], [0, 0, 1])
})

for (const ground of ['day', 'lamp', 'print'] as const) {
  it(`on ${ground} equal steps look equal, and lightness goes one way`, () => {
    const labs = shares.map(s => rampLab(s, ground))
    const steps = labs.slice(1).map((b, i) => Math.hypot(b[0] - labs[i]![0], b[1] - labs[i]![1], b[2] - labs[i]![2]))
    const mean = steps.reduce((a, b) => a + b) / steps.length
    for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThan(0.02)
    const way = ground === 'lamp' ? 1 : -1
    labs.slice(1).forEach((b, i) => expect((b[0] - labs[i]![0]) * way).toBeGreaterThan(0))
  })

  it(`on ${ground} every colour is one that a screen can show`, () => {
    for (const s of shares) for (const c of oklabToRgb(rampLab(s, ground))) expect(c > -0.002 && c < 1.002).toBe(true)
  })
}

it('under the lamp there is no more blue than red anywhere, so that eyes stay used to the dark', () => {
  for (const s of shares) {
    const [r, , b] = oklabToRgb(rampLab(s, 'lamp'))
    expect(b).toBeLessThan(r / 2)
  }
})

it('a share outside 0 to 1 takes the colour of the end', () => {
  expect(ramp(-1, 'day')).toBe(ramp(0, 'day'))
  expect(ramp(7, 'day')).toBe(ramp(1, 'day'))
  expect(ramp(0.5, 'day')).toMatch(/^#[0-9a-f]{6}$/)
})
