import { StoreError } from '@lodebook/book'

/** Turns what SQLite reports into one clear sentence. Anything else is passed on as it is. */
export function asStoreError(error: unknown, file: string): unknown {
  const code = error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : ''
  const fail = (reason: StoreError['reason'], sentence: string) => new StoreError(reason, sentence, { cause: error })
  const damaged = () => fail('damaged', `${file}: the file is damaged. Keep it, and open a copy of the book from another device or from an export.`)
  if (code === 'SQLITE_FULL' || code === 'SQLITE_IOERR_SHMSIZE') {
    return fail('full', `${file}: the disk is full. Nothing of this was saved and the book is as it was; make room and save it again.`)
  }
  if (code.startsWith('SQLITE_READONLY')) return fail('read-only', `${file}: this file may only be read. Nothing was saved and the book is as it was.`)
  if (code.startsWith('SQLITE_BUSY') || code === 'SQLITE_LOCKED') return fail('busy', `${file}: another program is writing to the book. Nothing was saved; try again.`)
  if (code === 'SQLITE_NOTADB') return fail('not a book', `${file}: this file is not a book.`)
  if (code.startsWith('SQLITE_CORRUPT')) return damaged()
  if (code.startsWith('SQLITE_CANTOPEN') || noFolder(error)) {
    return fail('failed', `${file}: the file cannot be opened; check that it and its folder exist and that you may write there.`)
  }
  if (error instanceof SyntaxError) return damaged()
  if (code.startsWith('SQLITE_')) return fail('failed', `${file}: the disk failed (${code}). Nothing of this was saved.`)
  return error
}

const noFolder = (error: unknown): boolean => error instanceof TypeError && error.message.includes('directory does not exist')
