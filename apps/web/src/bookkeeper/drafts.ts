import type { Database } from './database.ts'
import type { Texts } from './desk.ts'

const prefix = 'draft:'
const keyOf = (kind: string, mend: string | undefined): string => `${prefix}${kind}${mend === undefined ? '' : `:${mend}`}`

/** What is half written on this device. Kept with strict durability at every key: a flat battery costs nothing that was typed. */
export class Drafts {
  readonly #database: Database
  readonly #held: Map<string, Texts>
  private constructor(database: Database, held: Map<string, Texts>) {
    this.#database = database
    this.#held = held
  }

  static async of(database: Database): Promise<Drafts> {
    const keys = (await database.getAllKeys('facts')).filter(key => key.startsWith(prefix))
    const held = await Promise.all(keys.map(async key => [key, JSON.parse((await database.get('facts', key))!) as Texts] as const))
    return new Drafts(database, new Map(held))
  }

  get(kind: string, mend?: string): Texts | undefined { return this.#held.get(keyOf(kind, mend)) }

  /** Kinds of which a new entry is half written. */
  get begun(): readonly string[] { return [...this.#held.keys()].map(key => key.slice(prefix.length)).filter(key => !key.includes(':')) }

  async keep(kind: string, mend: string | undefined, texts: Texts | undefined): Promise<void> {
    const key = keyOf(kind, mend), transaction = this.#database.transaction('facts', 'readwrite', { durability: 'strict' })
    if (texts) this.#held.set(key, texts); else this.#held.delete(key)
    await Promise.all([texts ? transaction.store.put(JSON.stringify(texts), key) : transaction.store.delete(key), transaction.done])
  }
}
