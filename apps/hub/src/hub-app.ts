import { fold, StoreError } from '@lodebook/book'
import type { Cursors } from '@lodebook/book'
import { Hono } from 'hono'
import type { Context } from 'hono'
import { callOuts } from './call-out-watch.ts'
import { guard } from './guard.ts'
import { Refusal } from './hub-error.ts'
import { limits, wholeBody } from './read-body.ts'
import { readPostings } from './read-postings.ts'
import type { SqliteStore } from './sqlite-store.ts'
import { staticFile } from './static-files.ts'
import { takePostings } from './take-postings.ts'

export interface HubOptions {
  /** Folder of the built web app; without it the hub answers only to devices. */
  readonly webRoot?: string
  /** Names by which the hub may be called besides addresses, localhost and names that end in .local. */
  readonly names?: readonly string[]
  /** The hub's clock, milliseconds since 1970. */
  readonly now?: () => number
  /** Told of faults that are the hub's own. */
  readonly report?: (error: unknown) => void
}

/** As many postings as one answer holds, unless it is asked for fewer. */
export const pageSize = 10_000

const blobName = /^[0-9a-f]{64}$/

/**
 * What the crew's hub answers to. Everything that it says no to comes as `{ "error": sentence, … }`.
 *
 *     GET  /api/book                    { id, name, postings, cursors }
 *     GET  /api/postings?after=CURSORS  postings after the cursors, one a line; where there are more, the header lodebook-next says what to
 *                                       add to the same question as &from=
 *     POST /api/postings                one posting a line, or { postings: [ … ] }: { added, refused: [ { device, seq, message, problem, posting } ] }
 *     GET  /api/call-out                { now, open: [ … ] } who is written as in, by the hub's clock (docs/call-out.md)
 *     GET  /api/blobs/SHA256            the bytes
 *     PUT  /api/blobs/SHA256            204 once they are durable
 */
export function hubApp(store: SqliteStore, { webRoot, names = [], now = Date.now, report }: HubOptions = {}): Hono {
  const app = new Hono()
  const called = new Set(names.map(name => name.toLowerCase()))

  app.use(async (c, next) => {
    guard(c.req.raw, called)
    await next()
    c.header('x-content-type-options', 'nosniff')
    c.header('referrer-policy', 'no-referrer')
    if (c.req.path.startsWith('/api/') && !c.res.headers.has('cache-control')) c.header('cache-control', 'no-store')
  })

  app.get('/api/book', async (c) => {
    const [mine] = fold(await store.ofKind('mine')).all.values()
    const name = mine?.fields['name']
    return c.json({ id: mine?.id ?? '', name: typeof name === 'string' ? name : '', postings: await store.count(), cursors: await store.cursors() })
  })

  app.get('/api/postings', async (c) => {
    const after = query(c, 'after', isCursors, 'the place reached in each device\'s chain, such as {"slate":12}') ?? {}
    const from = query(c, 'from', isPosition, 'the lodebook-next header of the answer before')
    const limit = Math.min(pageSize, Math.max(1, Number(c.req.query('limit') ?? pageSize) || pageSize))
    const page = await store.page(after, limit + 1, from)
    const last = page[limit - 1]
    if (page.length > limit && last) c.header('lodebook-next', JSON.stringify({ device: last.device, seq: last.seq }))
    c.header('content-type', 'application/jsonl; charset=utf-8')
    return c.body(page.slice(0, limit).map(posting => `${JSON.stringify(posting)}\n`).join(''))
  })

  app.post('/api/postings', async c => c.json(await takePostings(store, await readPostings(c.req.raw))))

  app.get('/api/call-out', async (c) => {
    const at = now()
    return c.json({ now: at, open: await callOuts(store, at) })
  })

  app.get('/api/blobs/:sha256', async (c) => {
    const bytes = await store.getBlob(named(c))
    if (bytes === undefined) throw new Refusal(404, 'The hub does not hold this file.')
    c.header('content-type', 'application/octet-stream')
    c.header('cache-control', 'private, max-age=31536000, immutable')
    return c.body(bytes as Uint8Array<ArrayBuffer>)
  })

  app.put('/api/blobs/:sha256', async (c) => {
    const sha256 = named(c)
    await store.putBlob(sha256, await wholeBody(c.req.raw, limits.blob))
    return c.body(null, 204)
  })

  app.all('/api/*', (c) => { throw new Refusal(404, `The hub does not know ${c.req.method} ${c.req.path}.`) })

  app.on(['GET', 'HEAD'], '/*', async (c) => {
    const file = webRoot === undefined ? undefined : await staticFile(webRoot, c.req.path, c.req.method === 'HEAD')
    if (file === undefined) throw new Refusal(404, webRoot === undefined ? 'This hub serves devices only; the web app is not with it.' : 'There is no such page.')
    return file
  })

  app.notFound(c => c.json({ error: 'There is no such page.' }, 404))
  app.onError((error, c) => answerTo(error, c, report))
  return app
}

const named = (c: Context): string => {
  const sha256 = c.req.param('sha256') ?? ''
  if (!blobName.test(sha256)) throw new Refusal(400, 'A file is named by the 64 hexadecimal digits of its SHA-256.', { field: 'sha256', value: sha256.slice(0, 80) })
  return sha256
}

const isPlace = (value: unknown): boolean => Number.isSafeInteger(value) && (value as number) >= 0
const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value)
const isCursors = (value: unknown): value is Cursors => isObject(value) && Object.values(value).every(isPlace)
const isPosition = (value: unknown): value is { device: string, seq: number } => isObject(value) && typeof value['device'] === 'string' && isPlace(value['seq'])

/** A part of the question that is written as JSON. */
function query<T>(c: Context, name: string, fits: (value: unknown) => value is T, expected: string): T | undefined {
  const text = c.req.query(name)
  if (text === undefined) return undefined
  let value: unknown
  try { value = JSON.parse(text) } catch { value = undefined }
  if (fits(value)) return value
  throw new Refusal(400, `${name}: ${JSON.stringify(text.slice(0, 60))} will not do; expected ${expected}.`, { field: name, value: text.slice(0, 60), expected })
}

const statusOf: Partial<Record<StoreError['reason'], 400 | 403 | 503 | 507>> = { misnamed: 400, 'read-only': 403, busy: 503, full: 507, closed: 503 }

function answerTo(error: Error, c: Context, report: HubOptions['report']): Response {
  if (error instanceof Refusal) return c.json({ error: error.message, ...error.more }, error.status)
  if (error instanceof StoreError) {
    const status = statusOf[error.reason]
    if (status === undefined) report?.(error)
    return c.json({ error: error.message, reason: error.reason }, status ?? 500)
  }
  report?.(error)
  return c.json({ error: 'The hub failed; nothing of this request was saved.' }, 500)
}
