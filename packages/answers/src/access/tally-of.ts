import type { Entry } from '@lodebook/book'
import { loadRate, timeForLoads } from '@lodebook/reckon/earthwork'
import type { LoadRate } from '@lodebook/reckon/earthwork'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, textOf } from '../read.ts'
import { figure, plural } from '../words.ts'
import type { Tally } from './shapes.ts'

/** How far off a reckoned pace may be before any load is tipped, one in ten beyond either side. Common practice, no source. */
const paceFactor = 2
const next = 20

export interface Paced { readonly rate: LoadRate, readonly pace: Answer, readonly done: number }

/** Loads of a job tipped so far, and the pace that their times show beside the one that was reckoned. */
export function pacedBy(id: string, loads: readonly Entry[], reckoned: Answer): Paced {
  const timed = loads.flatMap((entry) => {
    const at = Date.parse(textOf(entry, 'at') ?? ''), count = numberOf(entry, 'count') ?? 1
    return Number.isFinite(at) && count > 0 ? [{ at: at / 60_000, count, day: textOf(entry, 'at')!.slice(0, 10) }] : []
  }).sort((a, b) => a.at - b.at)
  // Several loads written at once tell how many but not when; they part a run of single ones.
  const sessions: number[][] = []
  timed.forEach((one, i) => {
    const before = timed[i - 1]
    if (one.count > 1 || before === undefined || before.day !== one.day || before.count > 1) sessions.push([])
    sessions.at(-1)!.push(one.at)
  })
  const rate = loadRate(sessions, { minutes: reckoned.value, factor: paceFactor }), done = timed.reduce((sum, one) => sum + one.count, 0)
  return {
    rate, done,
    pace: buildAnswer({
      id: `${id}.pace`, value: rate.minutes, unit: 'min', range: { low: rate.low, high: rate.high, confidence: 0.8, because: rate.gaps > 0 ? ['how even the loads came', 'how many were timed'] : ['nothing is tallied yet'] },
      sentence: rate.gaps > 0 ? `A load every ${figure(rate.minutes, 2)} minutes, from ${plural(rate.gaps, 'timed gap')}.` : `A load every ${figure(rate.minutes, 2)} minutes as reckoned; none is timed yet.`,
      method: {
        name: 'gamma gaps with what was reckoned as the prior', page: 'load-pace',
        working: [`reckoned ${figure(reckoned.value, 3)} min a load, a factor of ${paceFactor} either way`, `${plural(rate.gaps, 'gap')} over ${figure(rate.worked, 3)} min of work, ${plural(rate.breaks, 'break')} left out`],
      },
      sources: ['A. Gelman et al., Bayesian Data Analysis, ch. 2 (from memory): conjugate analysis of the gamma law'], from: loads.map(l => l.id), parts: [reckoned],
    }),
  }
}

/** The tally of a job in words: done, left, and the next twenty at this rate. */
export function tallyOf(id: string, { rate, pace, done }: Paced, loads: readonly Entry[], left: Answer): Tally {
  const ahead = Math.min(next, Math.round(left.value)), time = ahead > 0 ? timeForLoads(rate, ahead) : undefined
  const days = new Map<string, number>()
  for (const entry of loads) { const day = textOf(entry, 'at')?.slice(0, 10) ?? ''; days.set(day, (days.get(day) ?? 0) + (numberOf(entry, 'count') ?? 1)) }
  const last = [...days].sort(([a], [b]) => a < b ? 1 : -1)[0]
  const answer = time && buildAnswer({
    id: `${id}.next`, value: time.minutes / 60, unit: 'h', range: { low: time.low / 60, high: time.high / 60, confidence: 0.8, because: ['the pace', 'how loads scatter about it'] },
    sentence: `At this rate ${plural(ahead, 'more load')} take about ${hours(time.minutes)} (80 %: ${hours(time.low)} to ${hours(time.high)}).`,
    method: { name: 'sum of so many gaps over the belief in the pace', page: 'load-pace', working: [`${ahead} × about ${figure(rate.minutes, 3)} min`] }, parts: [pace],
  })
  const so = done === 0 ? 'No load is tallied yet.' : `${plural(done, 'load')} tipped${last ? `, ${last[1]} on ${last[0]}` : ''}.`
  return {
    sentence: [so, answer?.sentence ?? ''].filter(Boolean).join(' '), done, left, pace, lastDay: last ? { day: last[0], loads: last[1] } : undefined,
    next: answer ? { loads: ahead, answer } : undefined,
  }
}

const hours = (minutes: number): string => minutes < 90 ? `${Math.round(minutes)} minutes` : `${figure(minutes / 60, 2)} hours`
