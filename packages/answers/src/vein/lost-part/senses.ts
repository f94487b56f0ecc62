import type { Enu } from '@lodebook/reckon'
import { axesOf } from '@lodebook/reckon/structure'
import type { FarSide, FittedVein, SlipSense } from '@lodebook/reckon/structure'
import type { Answer } from '../../answer.ts'
import type { AssumedFigure } from '../../assumptions.ts'
import { buildAnswer } from '../../build-answer.ts'
import { textOf } from '../../read.ts'
import { figure, plural } from '../../words.ts'
import type { Sited } from '../vein-data.ts'

export interface SensesRead { readonly senses: readonly SlipSense[], readonly answer: Answer<string> }

const times = (v: Enu, k: number): Enu => [v[0] * k, v[1] * k, v[2] * k]

/**
 * Which way the far side moved, by the sense the crew wrote with the fault and its grooves; undefined when none was written or they cancel out.
 *
 * Normal and reverse tell whether the hanging wall went down or up, left and right which way the other side went, whichever side one looks from.
 * Readings that say the same rest on the same grooves and steps: many of them are not trusted more than one.
 */
export function sensesOn(fault: FittedVein, far: FarSide, readings: readonly Sited[], trusted: AssumedFigure): SensesRead | undefined {
  const { strike, dip } = axesOf(fault)
  const count = (sense: string) => readings.filter(({ entry }) => textOf(entry, 'sense') === sense)
  const axes = ([['normal', 'reverse', dip], ['left', 'right', strike]] as const).flatMap(([one, other, axis]) => {
    const [ones, others] = [count(one), count(other)]
    const lead = ones.length - others.length
    if (lead === 0) return []
    const trust = 0.5 + (Math.min(1, Math.max(0.5, trusted.value)) - 0.5) * Math.abs(lead) / (ones.length + others.length)
    const against = Math.min(ones.length, others.length)
    return [{ word: lead > 0 ? one : other, trust, toward: times(axis, far * Math.sign(lead)), from: [...ones, ...others], against }]
  })
  if (axes.length === 0) return undefined
  return {
    senses: axes.map(({ toward, trust }) => ({ toward, trust })),
    answer: buildAnswer({
      id: 'lost-part.sense', value: axes.map(a => a.word).join(' and '),
      sentence: `${axes.map(a => `Written as ${a.word} in ${plural(a.from.length - a.against, 'reading')}${a.against > 0 ? `, the other way in ${a.against}` : ''}, trusted ${figure(100 * a.trust, 2)} in 100`).join('; ')}.`,
      method: { name: 'sense of slip as written', page: 'lost-part' }, from: axes.flatMap(a => a.from.map(s => s.entry.id)), assumed: [trusted],
    }),
  }
}
