/** A document that hands out its bytes piece by piece. */
interface Streamed { on(event: 'data', take: (piece: Uint8Array) => void): unknown, on(event: 'end', take: () => void): unknown, on(event: 'error', take: (error: Error) => void): unknown }

/** All bytes of a document that has yet to end. */
export function bytesOf(doc: Streamed): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const pieces: Uint8Array[] = []
    doc.on('data', (piece) => { pieces.push(piece) })
    doc.on('error', reject)
    doc.on('end', () => {
      const bytes = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0))
      pieces.reduce((at, piece) => { bytes.set(piece, at); return at + piece.length }, 0)
      resolve(bytes)
    })
  })
}
