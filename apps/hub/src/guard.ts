import { isIP } from 'node:net'
import { Refusal } from './hub-error.ts'

/**
 * Keeps pages of other sites from reading or writing the book through the browser of somebody who has it open: the request must be made to
 * this machine by an address or a name that is its own (another site may point its name here), and by the app itself.
 * @param names  names by which the hub may be called besides addresses, localhost and names that end in .local
 */
export function guard(request: Request, names: ReadonlySet<string>): void {
  const host = request.headers.get('host') ?? new URL(request.url).host
  const name = hostname(host)
  const own = name !== undefined && (isIP(name) !== 0 || name === 'localhost' || name.endsWith('.local') || names.has(name))
  if (!own) throw new Refusal(403, `The hub is not called ${host}; use its address, or give it this name when it is started.`)
  const origin = request.headers.get('origin')
  if (origin !== null && origin !== `http://${host}` && origin !== `https://${host}`) throw new Refusal(403, `A page of ${origin} may not use this book.`)
}

const hostname = (host: string): string | undefined => {
  try { return new URL(`http://${host}`).hostname.replace(/^\[(.*)\]$/, '$1') } catch { return undefined }
}
