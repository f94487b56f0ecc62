import { closeSync, fsyncSync, openSync, renameSync, rmSync, statSync, writeSync } from 'node:fs'

/** Writes a file piece by piece. It is put in its place only when it is whole; a pipe or a device is written to as it is. */
export async function writeFile(file: string, pieces: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>): Promise<void> {
  const before = statSync(file, { throwIfNoEntry: false })
  const direct = before !== undefined && !before.isFile()
  const target = direct ? file : `${file}.part`
  const handle = openSync(target, 'w')
  try {
    for await (const piece of pieces) writePiece(handle, piece)
    if (!direct) fsyncSync(handle)
  } catch (failure) {
    if (!direct) rmSync(target, { force: true })
    throw failure instanceof Error ? Object.assign(failure, { path: file }) : failure
  } finally { closeSync(handle) }
  if (!direct) renameSync(target, file)
}

/** A piece whole, however often the system takes only part of it. */
function writePiece(handle: number, piece: string | Uint8Array): void {
  const bytes = typeof piece === 'string' ? Buffer.from(piece) : piece
  for (let at = 0; at < bytes.length;) at += writeSync(handle, bytes, at)
}
