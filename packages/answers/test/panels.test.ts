import { describe, expect, it } from 'vitest'
import { contains, groundPanels } from '../src/grade/panels.ts'

const line = Array.from({ length: 11 }, (_, i) => ({ along: 2 * i, down: 0 }))
const area = (panels: ReturnType<typeof groundPanels>) => panels.reduce((sum, p) => sum + p.area, 0)

describe('panels', () => {
  it('[N1] cover the ground within reach of a sample and no more', () => {
    const panels = groundPanels({ samples: line, reach: 4, size: 1, taken: [] })
    for (const p of panels) expect(p.nearest).toBeLessThanOrEqual(4)
    // A strip 20 m long and 8 m high with round ends, less what falls between samples: within 5 % of it.
    expect(area(panels)).toBeGreaterThan(0.95 * (160 + Math.PI * 16))
    expect(area(panels)).toBeLessThan(1.05 * (160 + Math.PI * 16))
  })

  it('[N2] what has been taken is not counted', () => {
    const whole = groundPanels({ samples: line, reach: 4, size: 1, taken: [] })
    const stope = [{ along: 4, down: -3 }, { along: 10, down: -3 }, { along: 10, down: 0 }, { along: 4, down: 0 }]
    const left = groundPanels({ samples: line, reach: 4, size: 1, taken: [stope] })
    expect(area(whole) - area(left)).toBeCloseTo(18, 0)
    for (const p of left) for (const q of p.points) expect(contains(stope, q)).toBe(false)
  })

  it('[N3] nothing beyond the fault is counted', () => {
    const cut = { point: { along: 12, down: 0 }, direction: { along: 0, down: 1 }, keep: 1 as const }
    const panels = groundPanels({ samples: line, reach: 4, size: 1, taken: [], cut })
    for (const p of panels) for (const q of p.points) expect(q.along).toBeLessThanOrEqual(12)
  })

  it('[N4] grow until a crew can read them, and still cover the ground to a fifth', () => {
    const far = Array.from({ length: 300 }, (_, i) => ({ along: 2 * i, down: 0 }))
    const panels = groundPanels({ samples: far, reach: 4, size: 1, taken: [] })
    expect(panels.length).toBeLessThanOrEqual(2500)
    expect(area(panels)).toBeGreaterThan(0.8 * 600 * 8)
    expect(new Set(panels.map(p => p.name)).size).toBe(panels.length)
  })

  it('[N5] no sample, no panel; one sample, the panels about it', () => {
    expect(groundPanels({ samples: [], reach: 4, size: 1, taken: [] })).toEqual([])
    expect(groundPanels({ samples: [{ along: 0, down: 0 }], reach: 2, size: 1, taken: [] }).length).toBe(12)
  })
})
