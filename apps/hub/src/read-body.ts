import { Refusal } from './hub-error.ts'

/** What a request may bring, in bytes. */
export const limits = { postings: 64_000_000, blob: 100_000_000 } as const

/** The bytes of a request as they come, refused as soon as there are more than `most`. */
export async function* bodyOf(request: Request, most: number): AsyncGenerator<Uint8Array, void, undefined> {
  const tooMuch = () => new Refusal(413, `This is more than ${most / 1_000_000} MB; send it in parts.`, { limit: most })
  if (Number(request.headers.get('content-length') ?? 0) > most) throw tooMuch()
  if (request.body === null) return
  let size = 0
  for await (const chunk of request.body as unknown as AsyncIterable<Uint8Array>) {
    size += chunk.length
    if (size > most) throw tooMuch()
    yield chunk
  }
}

/** All of it in one piece. */
export async function wholeBody(request: Request, most: number): Promise<Uint8Array> {
  const parts: Uint8Array[] = []
  for await (const part of bodyOf(request, most)) parts.push(part)
  return new Uint8Array(Buffer.concat(parts))
}
