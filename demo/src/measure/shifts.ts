import type { Making } from '../making.ts'
import { daysFrom, momentText, timeOn } from '../write/clock.ts'
import { crew, everyone, ives, moss, wren } from '../write/crew.ts'
import { goldMass } from '../write/as-written.ts'

/**
 * What a person truly gets through in an hour with hand tools, tonnes, on an ordinary day; days differ by `spread` (of the logarithm).
 * Stated for this invented crew, no source.
 */
export const rates = { break: 0.045, muck: 0.45, tram: 0.35, crush: 0.13, wash: 0.2, spread: 0.25 } as const
/** Share of the gold in the rock that the crew's crusher and sluice keep. */
export const plantRecovery = 0.68
/** The block they tried: a slice under the left drift. */
const trial = { from: -30, to: -20, top: 0.9, bottom: 2.1 }
const loadVolume = '2 cu ft'
/** Tonnes in one heaped barrow of broken rock. */
const barrow = 0.092

type Task = keyof Omit<typeof rates, 'spread'>
/** One round of work, hours each: break for three days, then move what was broken, crush it and wash it. */
const round: readonly (readonly [Task, number])[][] = [[['break', 6]], [['break', 6]], [['break', 4], ['muck', 1]], [['tram', 1.4], ['crush', 2.5]], [['crush', 1.2], ['wash', 2.4]]]

/** Days on which they went in, days of clearing and timbering, and the trial: rock broken, moved, crushed and washed, and the gold won. */
export function shifts(making: Making): void {
  const { diary } = making, rng = making.numbers('shifts')
  const getting: readonly (readonly [string, string, string, string])[] = [
    ['2026-04-28', 'clear', '6 h', 'muck and brush at the portal'], ['2026-04-29', 'clear', '6.5 h', 'slope over the portal'], ['2026-04-30', 'timber', '7 h', 'first set'], ['2026-05-01', 'timber', '6 h', 'two sets'],
    ['2026-05-02', 'timber', '4 h', 'lagging'], ['2026-05-04', 'survey', '6 h', ''], ['2026-05-05', 'survey', '6 h', ''], ['2026-05-07', 'survey', '5 h', ''], ['2026-05-12', 'survey', '4 h', ''],
    ['2026-05-18', 'sample', '5 h', 'readings'], ['2026-06-08', 'detect', '5.5 h', ''], ['2026-06-12', 'detect', '6 h', ''], ['2026-06-17', 'detect', '5 h', ''], ['2026-06-29', 'sample', '7 h', ''], ['2026-07-03', 'sample', '6 h', ''], ['2026-07-08', 'sample', '5 h', ''],
  ]
  for (const [day, task, hours, note] of getting) {
    goIn(making, day, 'Adit')
    diary.write(moss, timeOn(day, 18), 'work', { worked: day, task, people: everyone, hours, heading: task === 'clear' || task === 'timber' ? 'Adit' : 'Left drift', note })
  }
  const days = daysFrom('2026-08-17', 50).filter((_, i) => i % 2 === 0)
  let washedTonnes = 0, gold = 0
  days.forEach((day, d) => {
    goIn(making, day, 'Left drift')
    round[d % round.length]!.forEach(([task, hours], i) => {
      const people = task === 'break' ? [wren, ives] : crew, tonnes = rates[task] * hours * people.length * rng.lognormal(1, rates.spread)
      // The washed rock is vein and wall from the trial block; what it carries is that block's grade with a third of waste broken with it.
      if (task === 'wash') { washedTonnes += tonnes; gold += tonnes * trialGrade(making) * 0.67 * plantRecovery * rng.lognormal(1, 0.2) }
      diary.write(moss, timeOn(day, 18, 5 * i), 'work', {
        worked: day, task, people: people.map(p => p.name).join(', '), hours: `${hours} h`, heading: 'Left drift',
        ...(task === 'tram' ? { loads: `${Math.max(1, Math.round(tonnes / barrow))}`, loadVolume } : task === 'muck' ? { loads: `${Math.max(1, Math.round(tonnes / barrow))}`, loadVolume, mass: `${Math.round(tonnes * 20) * 50} kg` } : { mass: `${Math.round(tonnes * 100) * 10} kg` }),
        equipment: { break: 'single jacks, feathers and wedges', muck: 'shovels', tram: 'two barrows', crush: 'hand-fed jaw crusher', wash: 'sluice, pans' }[task],
      })
    })
    if (d % 10 === 9) {
      diary.write(moss, timeOn(day, 19), 'work', { worked: day, task: 'clean up', people: everyone, hours: '2 h', goldMass: goldMass(gold * 1000, 1), note: `From about ${(washedTonnes * 1000).toFixed(0)} kg washed.` })
      washedTonnes = 0
      gold = 0
    }
  })
}

function trialGrade({ ore }: Making): number {
  const { from, to, top, bottom } = trial
  return ore.groundIn([[{ along: from, down: top }, { along: to, down: top }, { along: to, down: bottom }, { along: from, down: bottom }]], { step: 0.5 }).grade
}

function goIn({ diary }: Making, day: string, going: string): void {
  const late = day.endsWith('2')
  diary.write(moss, timeOn(day, 7, 50), 'going-in', {
    people: `${wren.name}, ${ives.name}`, in: momentText(timeOn(day, 8)), due: momentText(timeOn(day, 16)), out: momentText(timeOn(day, late ? 16 : 15, late ? 25 : 30)), outside: moss.name, reach: 'radio at camp', going,
  })
}
