import { linesOf } from '@lodebook/book'
import { Refusal } from './hub-error.ts'
import { bodyOf, limits, wholeBody } from './read-body.ts'

/** The postings that a request brings, unchecked: one a line, or `{ "postings": [ … ] }` when it says that it is JSON. */
export async function readPostings(request: Request): Promise<readonly unknown[]> {
  return /^application\/json\b/.test(request.headers.get('content-type') ?? '') ? fromJson(request) : fromLines(request)
}

async function fromLines(request: Request): Promise<readonly unknown[]> {
  const postings: unknown[] = []
  for await (const line of linesOf(bodyOf(request, limits.postings))) {
    if (!line.ok) throw new Refusal(400, line.problem.message, { row: line.problem.row, field: line.problem.field })
    if (line.text === '') continue
    postings.push(parse(line.text, `Row ${line.row}`))
  }
  return postings
}

async function fromJson(request: Request): Promise<readonly unknown[]> {
  const body = parse(Buffer.from(await wholeBody(request, limits.postings)).toString('utf8'), 'The request')
  if (typeof body !== 'object' || body === null || !('postings' in body) || !Array.isArray(body.postings)) {
    throw new Refusal(400, 'The request holds no list of postings; expected { "postings": [ … ] } or one posting a line.', { field: 'postings' })
  }
  return body.postings as readonly unknown[]
}

function parse(text: string, where: string): unknown {
  try { return JSON.parse(text) } catch { throw new Refusal(400, `${where}: this is not JSON. Nothing was saved.`, { field: 'body' }) }
}
