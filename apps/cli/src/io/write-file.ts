import { closeSync, fsyncSync, openSync, renameSync, rmSync, statSync, writeSync } from 'node:fs'

/** Writes a file piece by piece. It is put in its place only when it is whole; a pipe or a device is written to as it is. */
export async function writeFile(file: string, pieces: AsyncIterable<string> | Iterable<string>): Promise<void> {
  const before = statSync(file, { throwIfNoEntry: false })
  const direct = before !== undefined && !before.isFile()
  const target = direct ? file : `${file}.part`
  const handle = openSync(target, 'w')
  try {
    for await (const piece of pieces) writeSync(handle, piece)
    if (!direct) fsyncSync(handle)
  } catch (failure) {
    if (!direct) rmSync(target, { force: true })
    throw failure instanceof Error ? Object.assign(failure, { path: file }) : failure
  } finally { closeSync(handle) }
  if (!direct) renameSync(target, file)
}
