import Database from 'better-sqlite3'
import { closedStore, forkedPlace, misnamedBlob, sha256Hex, StoreError } from '@lodebook/book'
import type { Cursors, Posting, Store } from '@lodebook/book'
import { asStoreError } from './sqlite-errors.ts'

/** 'Lode', in the file's header, so that a book is told from other SQLite files. */
const applicationId = 0x4c6f6465
/** Of the tables below. */
const layout = 1

const tables = `
  CREATE TABLE posting (device TEXT NOT NULL, seq INTEGER NOT NULL, hash TEXT NOT NULL, kind TEXT NOT NULL, json TEXT NOT NULL, PRIMARY KEY (device, seq)) STRICT, WITHOUT ROWID;
  CREATE INDEX posting_kind ON posting (kind);
  CREATE TABLE blob (sha256 TEXT NOT NULL PRIMARY KEY, bytes BLOB NOT NULL) STRICT;
  PRAGMA application_id = ${applicationId};
  PRAGMA user_version = ${layout};`

export interface SqliteOptions {
  /** Open only to read; nothing is created. */
  readonly readOnly?: boolean
  /** Refuse to begin a new book where there is none. */
  readonly mustExist?: boolean
  /** The most that the file may grow to, for a device whose disk others need too. */
  readonly maxBytes?: number
  /** How long to wait for another program that is writing, milliseconds; 5000 unless said. */
  readonly waitMs?: number
}

interface Row { readonly json: string }

/**
 * A book in one SQLite file. Write-ahead log with full sync: `append` returns only when the postings have reached the disk, and one call is
 * one transaction. Several programs may have the file open at once.
 * @throws StoreError when the file cannot be opened, is no book, or was made by a newer Lodebook
 */
export class SqliteStore implements Store {
  readonly #db: Database.Database
  readonly #file: string

  constructor(file: string, options: SqliteOptions = {}) {
    this.#file = file
    this.#db = this.#mapped(() => open(file, options))
  }

  append(postings: readonly Posting[]): Promise<{ readonly added: number }> {
    return this.#open((db) => {
      const insert = db.prepare('INSERT INTO posting (device, seq, hash, kind, json) VALUES (?, ?, ?, ?, ?) ON CONFLICT DO NOTHING')
      const there = db.prepare<[string, number], { hash: string }>('SELECT hash FROM posting WHERE device = ? AND seq = ?')
      const all = db.transaction(() => {
        let added = 0
        for (const posting of postings) {
          const { device, seq, hash, kind } = posting
          const { changes } = insert.run(device, seq, hash, kind, JSON.stringify(posting))
          if (changes === 0 && there.get(device, seq)?.hash !== hash) throw forkedPlace(device, seq)
          added += changes
        }
        return { added }
      })
      return all.immediate()
    })
  }

  since(cursors: Cursors = {}): Promise<readonly Posting[]> { return this.#open(db => after(db, cursors, -1)) }

  /** As `since`, but no more than so many, and only those behind `from` in that order: to be read a page at a time. */
  page(cursors: Cursors, limit: number, from?: { readonly device: string, readonly seq: number }): Promise<readonly Posting[]> {
    return this.#open(db => after(db, cursors, limit, from))
  }

  /** All postings of one kind of entry. */
  ofKind(kind: string): Promise<readonly Posting[]> {
    return this.#open(db => db.prepare<[string], Row>('SELECT json FROM posting WHERE kind = ? ORDER BY device, seq').all(kind).map(posting))
  }

  count(): Promise<number> {
    return this.#open(db => db.prepare<[], { n: number }>('SELECT count(*) AS n FROM posting').get()!.n)
  }

  cursors(): Promise<Cursors> {
    return this.#open((db) => {
      const spans = db.prepare<[], { device: string, first: number, last: number, n: number }>(
        'SELECT device, min(seq) AS first, max(seq) AS last, count(*) AS n FROM posting GROUP BY device').all()
      // The end of the first unbroken run: the lowest place whose successor is missing.
      const run = db.prepare<[string], { seq: number }>(`SELECT min(seq) AS seq FROM posting AS p WHERE device = ?
        AND NOT EXISTS (SELECT 1 FROM posting AS q WHERE q.device = p.device AND q.seq = p.seq + 1)`)
      return Object.fromEntries(spans.filter(({ first }) => first === 1)
        .map(({ device, last, n }) => [device, n === last ? last : run.get(device)!.seq]))
    })
  }

  putBlob(sha256: string, bytes: Uint8Array): Promise<void> {
    return this.#open((db) => {
      const actual = sha256Hex(bytes)
      if (actual !== sha256) throw misnamedBlob(sha256, actual)
      db.prepare('INSERT INTO blob (sha256, bytes) VALUES (?, ?) ON CONFLICT DO NOTHING').run(sha256, bytes)
    })
  }

  getBlob(sha256: string): Promise<Uint8Array | undefined> {
    return this.#open((db) => {
      const row = db.prepare<[string], { bytes: Buffer }>('SELECT bytes FROM blob WHERE sha256 = ?').get(sha256)
      return row && new Uint8Array(row.bytes)
    })
  }

  /** How the file is written, as SQLite reports it: `wal`, and 2 for full sync. */
  settings(): Promise<{ readonly journal: string, readonly synchronous: number }> {
    return this.#open(db => ({ journal: db.pragma('journal_mode', { simple: true }) as string, synchronous: db.pragma('synchronous', { simple: true }) as number }))
  }

  /** Leaves one plain file behind, which can be copied and read from a disk that cannot be written to, unless another program has it open. */
  close(): Promise<void> {
    if (this.#db.open && !this.#db.readonly) {
      try {
        this.#db.pragma('busy_timeout = 0')
        this.#db.pragma('journal_mode = DELETE')
      } catch (error) {
        if (!(error instanceof Database.SqliteError)) throw error
      }
    }
    this.#db.close()
    return Promise.resolve()
  }

  #open<T>(act: (db: Database.Database) => T): Promise<T> {
    return new Promise((resolve) => {
      if (!this.#db.open) throw closedStore()
      resolve(this.#mapped(() => act(this.#db)))
    })
  }

  #mapped<T>(act: () => T): T {
    try { return act() } catch (error) { throw asStoreError(error, this.#file) }
  }
}

const posting = ({ json }: Row): Posting => JSON.parse(json) as Posting

/** Postings after the cursors by device and place, at most `limit`; any number when it is negative. */
function after(db: Database.Database, cursors: Cursors, limit: number, from = { device: '', seq: 0 }): readonly Posting[] {
  return db.prepare<[string, string, number, number], Row>(`SELECT posting.json FROM posting LEFT JOIN json_each(?) AS cursor ON cursor.key = device
    WHERE (device, seq) > (?, ?) AND seq > coalesce(cursor.value, 0) ORDER BY device, seq LIMIT ?`).all(JSON.stringify(cursors), from.device, from.seq, limit).map(posting)
}

function open(file: string, { readOnly = false, mustExist = false, maxBytes, waitMs = 5000 }: SqliteOptions): Database.Database {
  const db = new Database(file, { readonly: readOnly, fileMustExist: readOnly || mustExist, timeout: waitMs })
  try {
    const version = db.pragma('user_version', { simple: true }) as number
    const empty = db.prepare<[], { n: number }>('SELECT count(*) AS n FROM sqlite_schema').get()!.n === 0
    if (empty && readOnly) throw new StoreError('not a book', `${file}: this file is not a book.`)
    if (!empty && db.pragma('application_id', { simple: true }) !== applicationId) throw new StoreError('not a book', `${file}: this file holds something else than a book.`)
    if (version > layout) throw new StoreError('newer', `${file}: it was written by a newer Lodebook; bring this one up to date.`)
    if (!readOnly) {
      db.pragma('journal_mode = WAL')
      db.pragma('synchronous = FULL')
      if (empty) begin(db)
    }
    if (maxBytes !== undefined) db.pragma(`max_page_count = ${Math.max(1, Math.floor(maxBytes / (db.pragma('page_size', { simple: true }) as number)))}`)
    return db
  } catch (error) {
    db.close()
    throw error
  }
}

/** Two programs may begin the same book at once; one of them finds it begun. */
function begin(db: Database.Database): void {
  db.transaction(() => {
    if (db.prepare<[], { n: number }>('SELECT count(*) AS n FROM sqlite_schema').get()!.n === 0) db.exec(tables)
  }).immediate()
}
