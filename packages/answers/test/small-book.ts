import { fold, input, isError, newDevice, newEntryId, writePostings } from '@lodebook/book'
import type { Book, DeviceState, Posting } from '@lodebook/book'

/** The evening on which these tests' crew writes its book. */
export const evening = Date.UTC(2026, 5, 1, 20)

/** A book written down line by line, as a crew writes: what was put wrong is thrown at once, so that a test can't pass on a half-empty book. */
export class SmallBook {
  private state: DeviceState = newDevice('laptop')
  postings: Posting[] = []
  /** Keeps arrays of untouched kinds, as the app's own book does, when handed to foldMore. */
  get book(): Book { return fold(this.postings) }

  write(kind: string, texts: Readonly<Record<string, string>>, entry = newEntryId(this.state)): string {
    const { set, problems } = input(kind, texts, { currency: 'USD', now: evening, ...this.postings.some(p => p.entry === entry) ? { book: this.book, entry } : {} })
    const refused = problems.filter(isError)
    if (refused.length > 0) throw new Error(refused.map(p => p.message).join('; '))
    const written = writePostings(this.state, [{ entry, kind, set }], { by: 'Ada', nowMs: evening })
    this.state = written.state
    this.postings.push(...written.postings)
    return entry
  }
}

/** An adit of three stations due north, a vein dipping 60° east crossed by it, nine channel samples along 16 m of it, and what pay needs. */
export function nineSamples(): SmallBook {
  const b = new SmallBook()
  b.write('mine', { name: 'Test adit', currency: 'USD', declination: '0', people: 'Ada, Bo' })
  b.write('tie', { station: 'A1', place: 'E 100 N 200 U 50', accuracy: '0.05 m' })
  for (const [from, to, distance] of [['A1', 'A2', '8 m'], ['A2', 'A3', '8 m']] as const) {
    b.write('shot', { from, to, distance, azimuth: '0', inclination: '0', left: '0.6 m', right: '0.6 m', up: '1 m', down: '0.8 m' })
  }
  b.write('heading', { name: 'Drift', sort: 'drift', stations: 'A1, A2, A3', vein: 'Main' })
  b.write('structure', { feature: 'vein', name: 'Main', place: 'A2', strike: '0', dip: '60', north: 'grid' })
  const grams = [4, 9, 2, 25, 60, 12, 7, 3, 15]
  grams.forEach((grade, i) => {
    const bag = `B-${i + 1}`
    const place = i < 4 ? `A1 + ${1 + 2 * i} m toward A2, back` : `A2 + ${2 * (i - 4)} m toward A3, back`
    b.write('sample', { bag, method: 'channel', place, vein: 'Main', width: `${30 + 2 * i} cm`, mass: '3 kg' })
    b.write('assay', { bag, gold: `${grade} g/t`, charge: '30 g', method: 'fire assay' }, `assay-${bag}`)
  })
  b.write('price', { of: 'gold', amount: '$2000', per: 'troy ounce fine', on: '2026-05-30', spread: '15', payable: '97' })
  b.write('cost', { item: 'Fuel', amount: '$20', per: 'person-day' })
  return b
}
