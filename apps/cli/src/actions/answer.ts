import type { Answer, PartName, Reckoner } from '@lodebook/answers'
import { createReckoner, entryTitle } from '@lodebook/answers'
import { crewUnits } from '../book/crew-input.ts'
import { withBook } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { openedPage, partPage, parts, secondLooksPart } from '../print/answers.ts'
import { sentences } from '../print/problems.ts'
import { refuse } from '../refusal.ts'

/** As it is typed: lost-part. */
const typed = (part: PartName): string => part.replace(/[A-Z]/g, c => `-${c.toLowerCase()}`)

/** `lodebook answer`: what the book comes to; one part of it; or one figure opened down to its entries. */
export function answerBook(path: string, part: string | undefined, options: { readonly json?: true, readonly open?: string }, io: Io): Promise<number> {
  const wanted = parts.filter(known => part === undefined || typed(known) === part)
  if (wanted.length === 0) throw refuse('part', part, `one of ${parts.map(typed).join(', ')}`)
  return withBook(path, io, ({ book }) => {
    const reckoner = createReckoner(book), only = wanted[0]!
    if (options.open !== undefined) {
      const answer = figureNamed(reckoner, options.open)
      const titleOf = (id: string) => { const entry = book.all.get(id); return entry ? entryTitle(entry) : 'not in the book' }
      io.out(options.json ? json(answer) : openedPage(answer, titleOf, io.columns))
    } else if (part === undefined) {
      io.out(options.json ? json(Object.fromEntries(parts.map(name => [name, reckoner.answer(name)]))) : overview(reckoner, path, io.columns))
    } else if (options.json) io.out(json(reckoner.answer(only)))
    else io.out(`${partPage(only, reckoner.answer(only), crewUnits(book), io.columns)}\nOpen a figure: lodebook answer ${path} --open NAME\n`)
    return exit.ok
  })
}

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`

function overview(reckoner: Reckoner, path: string, width: number): string {
  const lines = parts.flatMap((name) => {
    const one = reckoner.answer(name)
    return 'sentence' in one ? one.sentence : 'strike' in one ? `${one.strike.sentence} ${one.dip.sentence}` : []
  })
  const looks = secondLooksPart(reckoner.answer('secondLooks'), width)
  return `${[...new Set(lines)].map(line => sentences([line], width)).join('\n')}\n${looks === '' ? '' : `${looks}\n`}${sentences([`More of each: lodebook answer ${path} PART, of ${parts.map(typed).join(', ')}`], width)}`
}

/** The figure of that name, wherever in the answers it stands. */
function figureNamed(reckoner: Reckoner, name: string): Answer<unknown> {
  const all = figuresOf(parts.map(part => reckoner.answer(part)))
  const found = all.get(name)
  if (found) return found
  const near = [...all.keys()].filter(id => id.includes(name) || id.split('.').some(word => word !== '' && name.includes(word))).slice(0, 12)
  throw refuse('--open', name, `a figure of the answers${near.length > 0 ? `, such as ${near.join(', ')}` : `; there are ${all.size}`}`)
}

/** Every figure in a part of the answers, or behind one of its figures, by name. */
export function figuresOf(value: unknown): ReadonlyMap<string, Answer<unknown>> {
  const found = new Map<string, Answer<unknown>>()
  const seen = new Set<object>()
  const collect = (inner: unknown): void => {
    if (typeof inner !== 'object' || inner === null || seen.has(inner)) return
    seen.add(inner)
    if ('id' in inner && 'method' in inner && 'sentence' in inner && !found.has((inner as Answer<unknown>).id)) found.set((inner as Answer<unknown>).id, inner as Answer<unknown>)
    Object.values(inner).forEach(collect)
  }
  collect(value)
  return found
}
