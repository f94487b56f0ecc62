import { SqliteStore, startHub } from '@lodebook/hub'
import type { Hub } from '@lodebook/hub'
import type { Posting } from '@lodebook/book'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const webRoot = join(import.meta.dirname, '../../dist')

/** A hub at camp with the built app, over a book of its own. It can be switched off and on again at the same address. */
export class Camp {
  readonly #folder = mkdtempSync(join(tmpdir(), 'camp-'))
  #hub: Hub | undefined
  #port = 0
  /** The hub's clock; the machine's unless a test sets it. */
  now: () => number = Date.now

  get address(): string { return `http://127.0.0.1:${this.#port}/` }

  /** Puts postings into the book before the hub is on. */
  async begin(postings: readonly Posting[]): Promise<void> {
    const store = new SqliteStore(this.#book)
    await store.append(postings)
    await store.close()
  }

  get #book(): string { return join(this.#folder, 'camp.book') }

  async on(): Promise<void> {
    this.#hub = await startHub({ bookFile: this.#book, port: this.#port, webRoot, now: () => this.now() })
    this.#port = this.#hub.port
  }

  async off(): Promise<void> {
    await this.#hub?.close()
    this.#hub = undefined
  }

  /** What the hub holds, asked as a device asks. */
  async postings(): Promise<readonly Posting[]> {
    const answer = await fetch(new URL('api/postings', this.address))
    return (await answer.text()).split('\n').filter(Boolean).map(line => JSON.parse(line) as Posting)
  }

  async end(): Promise<void> {
    await this.off()
    rmSync(this.#folder, { recursive: true, force: true })
  }
}
