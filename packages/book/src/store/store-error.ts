/** Why a store did not do what was asked. The book in it is as it was before. */
export type StoreFailure = 'forked' | 'misnamed' | 'closed' | 'read-only' | 'full' | 'busy' | 'damaged' | 'newer' | 'not a book' | 'failed'

export class StoreError extends Error {
  override readonly name = 'StoreError'
  /** @param message  one sentence for a person, saying what to do where that helps */
  constructor(readonly reason: StoreFailure, message: string, options?: ErrorOptions) { super(message, options) }
}

/** [S4] */
export const forkedPlace = (device: string, seq: number): StoreError => new StoreError('forked',
  `Device ${device}, posting ${seq}: the book already holds a different posting there; the device's book was copied and written to twice. Nothing was added.`)

/** [S6] */
export const misnamedBlob = (sha256: string, actual: string): StoreError => new StoreError('misnamed',
  `File ${sha256.slice(0, 12)}…: its bytes have another SHA-256 (${actual.slice(0, 12)}…), so it was damaged on the way; send it again.`)

/** [S7] */
export const closedStore = (): StoreError => new StoreError('closed', 'The book was closed; open it again.')
