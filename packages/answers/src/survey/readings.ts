import type { NotEnough } from '../answer.ts'
import { textOf } from '../read.ts'
import { figure, plural } from '../words.ts'
import type { Survey } from './survey.ts'

/** One reading against the adjusted survey. Degrees for angles, metres for lengths. */
export interface ReadingAt {
  readonly entry: string
  /** 'C4 to C5', or a station for a tie. */
  readonly of: string
  readonly reading: string
  readonly unit: '°' | 'm'
  readonly observed: number
  readonly residual: number
  readonly sigma: number
  /** 0 nothing else checks it, 1 fully checked; null when left out. */
  readonly redundancy: number | null
  /** Smallest blunder in it that would be named four times out of five; null when nothing checks it. */
  readonly detectable: number | null
  readonly times: number | null
  readonly leftOut: boolean
}

/** How good one survey turned out beside what it was said to be. */
export interface SurveyQuality { readonly name: string, readonly shots: number, readonly times: number | null, readonly sentence: string }

export interface SurveyReadings {
  readonly sentence: string
  readonly readings: readonly ReadingAt[]
  readonly surveys: readonly SurveyQuality[]
  readonly cautions: readonly string[]
}

const fewest = 5 // spare readings from which a survey's own quality can be told; common practice, no source

/** Every reading with its residual, how far others check it, and the smallest blunder in it that would show. */
export function readingsOf(survey: Survey): SurveyReadings | NotEnough {
  const { result, shots, paced, ties } = survey
  if (result.readings.length === 0) return { notEnough: true, sentence: 'Nothing has been surveyed yet.', wanted: [{ kind: 'shot', why: 'the first shot starts the map' }], cautions: [] }
  const readings = result.readings.flatMap((r): ReadingAt[] => {
    const entry = r.shot === undefined ? ties[r.tie!] : shots[r.shot] ?? paced[r.shot - shots.length]
    return entry ? [{
      entry: entry.id, of: entry.kind === 'tie' ? textOf(entry, 'station')! : `${textOf(entry, 'from')!} to ${textOf(entry, 'to')!}`, reading: r.reading,
      unit: r.tie !== undefined || r.reading === 'distance' ? 'm' : '°', observed: r.observed, residual: r.residual, sigma: r.sigma, redundancy: r.redundancy,
      detectable: r.detectable, times: r.w === null ? null : Math.abs(r.w), leftOut: r.leftOut,
    }] : []
  })
  const alone = readings.filter(r => !r.leftOut && r.detectable === null).length
  return {
    sentence: `${plural(readings.length, 'reading')}; ${alone === 0 ? 'something else checks each' : `nothing else checks ${alone} of them, so they could be wrong without a sign`}.`,
    readings, surveys: qualities(survey), cautions: [],
  }
}

/** Sum of squared residuals over their sigmas beside the redundancy of the same readings, survey by survey. */
function qualities({ result, shots }: Survey): readonly SurveyQuality[] {
  const sums = new Map<string, { shots: Set<number>, squares: number, redundancy: number }>()
  for (const { shot, residual, sigma, redundancy } of result.readings) {
    const entry = shot === undefined ? undefined : shots[shot]
    if (!entry || redundancy === null) continue
    const name = textOf(entry, 'survey') ?? '', sum = sums.get(name) ?? { shots: new Set<number>(), squares: 0, redundancy: 0 }
    sum.shots.add(shot!)
    sum.squares += (residual / sigma) ** 2
    sum.redundancy += redundancy
    sums.set(name, sum)
  }
  return [...sums].map(([name, { shots: count, squares, redundancy }]) => {
    const times = redundancy >= fewest ? Math.sqrt(squares / redundancy) : null, called = name === '' ? 'Shots of no named survey' : name
    return { name: called, shots: count.size, times, sentence: times === null ? `${called}: too little checks it to say how good it is.` : `${called}: its readings miss by ${figure(times, 2)} times what they were said to be good to.` }
  })
}
