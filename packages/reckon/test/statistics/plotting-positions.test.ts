import { describe, expect, it } from 'vitest'
import { plottingPositions } from '../../src/statistics/index.ts'

const values = (...of: (number | string)[]) => of.map(v => typeof v === 'string' ? { value: Number(v.slice(1)), below: true } : { value: v, below: false })

describe('places on a probability plot', () => {
  it('[PP1] without limits: (i - 1/2)/n, lowest first, each naming where it stood', () => {
    const plotted = plottingPositions(values(3, 1, 2, 10))
    expect(plotted.map(p => [p.value, p.of])).toEqual([[1, 1], [2, 2], [3, 0], [10, 3]])
    plotted.forEach((p, i) => expect(p.share).toBeCloseTo((i + 0.5) / 4, 12))
    expect(plotted[0]!.score).toBeCloseTo(-1.15034938, 7) // normal quantile of 1/8 (R: qnorm)
    expect(plotted[0]!.score).toBeCloseTo(-plotted[3]!.score, 12)
  })

  it('[PP2] values under a limit below all others take the lowest places undrawn', () => {
    const plotted = plottingPositions(values('<1', 2, 4, '<1'))
    expect(plotted.map(p => [p.value, p.share])).toEqual([[2, 0.625], [4, 0.875]])
  })

  it('[PP3] a limit among the values shares its place out among those below it (product limit, by hand)', () => {
    // From the top: 9 takes 1 to 3/4; <5 is dropped; 2 and 1 then share 3/4: 3/4 to 3/8 and 3/8 to 0.
    const plotted = plottingPositions(values(1, '<5', 9, 2))
    expect(plotted.map(p => p.value)).toEqual([1, 2, 9])
    for (const [i, share] of [0.1875, 0.5625, 0.875].entries()) expect(plotted[i]!.share).toBeCloseTo(share, 12)
  })

  it('[PP4] a limit that equals a value lies below it; equals keep their order', () => {
    expect(plottingPositions(values('<3', 3)).map(p => p.share)).toEqual([0.75])
    expect(plottingPositions(values(5, 5)).map(p => p.of)).toEqual([0, 1])
  })

  it('[PP5] only limits: nothing to draw; nothing at all is refused', () => {
    expect(plottingPositions(values('<1', '<2'))).toEqual([])
    expect(() => plottingPositions([])).toThrow('too few')
    expect(() => plottingPositions(values(1, Number.NaN))).toThrow('values[1]')
  })
})
