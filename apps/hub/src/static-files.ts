import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { extname, join, resolve, sep } from 'node:path'
import { Readable } from 'node:stream'

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.mjs': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.json': 'application/json', '.map': 'application/json', '.webmanifest': 'application/manifest+json', '.svg': 'image/svg+xml', '.png': 'image/png',
  '.jpg': 'image/jpeg', '.webp': 'image/webp', '.ico': 'image/x-icon', '.woff2': 'font/woff2', '.woff': 'font/woff', '.wasm': 'application/wasm', '.txt': 'text/plain; charset=utf-8',
}

/**
 * Answers with a file of the web app. A path without an extension is a screen of the app, so it gets the app's page.
 * Files whose name carries a hash of their contents may be kept for good; all others are asked for anew each time.
 * @returns undefined when there is no such file
 */
export async function staticFile(root: string, pathname: string, head: boolean): Promise<Response | undefined> {
  const plain = decoded(pathname)
  if (plain === undefined) return undefined
  const file = await within(root, plain === '/' ? '/index.html' : plain) ?? (extname(plain) === '' ? await within(root, '/index.html') : undefined)
  if (file === undefined) return undefined
  const hashed = /[-.][A-Za-z0-9_-]{8,}\.[a-z0-9]+$/.test(file.path) && file.path.includes(`${sep}assets${sep}`)
  const headers = {
    'content-type': types[extname(file.path)] ?? 'application/octet-stream', 'content-length': String(file.size),
    'cache-control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
  }
  // Node's stream and the browser's are one thing at run time; their types are not.
  const body: unknown = head ? null : Readable.toWeb(createReadStream(file.path))
  return new Response(body as ReadableStream | null, { headers })
}

/** The file that a path names below the root, never one beside it. */
async function within(root: string, plain: string): Promise<{ readonly path: string, readonly size: number } | undefined> {
  const top = resolve(root)
  const path = resolve(join(top, plain))
  if (!path.startsWith(top + sep)) return undefined
  const found = await stat(path).catch(() => undefined)
  return found?.isFile() ? { path, size: found.size } : undefined
}

function decoded(pathname: string): string | undefined {
  try {
    const plain = decodeURIComponent(pathname)
    return plain.includes('\0') ? undefined : plain
  } catch { return undefined }
}
