import { InputError } from '@lodebook/reckon'
import { unzlibSync } from 'fflate'

const woff = 0x774f4646
const headSize = 44
const entrySize = 20
const whole = (bytes: number) => bytes + 3 & ~3

/**
 * A font out of its web wrapping (WOFF 1.0), as the drawing library can take parts of it: from the wrapped file it makes fonts with empty letters.
 * @param bytes  of a WOFF file; any other font is given back as it is
 * @throws InputError when the file is cut off
 * Source: WOFF File Format 1.0, W3C Recommendation 2012 (from memory).
 */
export function openFont(bytes: Uint8Array): Uint8Array {
  const from = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length < headSize || from.getUint32(0) !== woff) return bytes
  const count = from.getUint16(12)
  if (bytes.length < headSize + count * entrySize) throw new InputError('font', bytes.length, 'a whole font file')
  const tables = Array.from({ length: count }, (_, i) => {
    const at = headSize + i * entrySize, offset = from.getUint32(at + 4), packed = from.getUint32(at + 8), length = from.getUint32(at + 12)
    const data = bytes.subarray(offset, offset + packed)
    return { tag: from.getUint32(at), sum: from.getUint32(at + 16), data: packed < length ? unzlibSync(data) : data }
  })
  const head = 12 + 16 * count, out = new Uint8Array(tables.reduce((sum, t) => sum + whole(t.data.length), head)), to = new DataView(out.buffer)
  const power = Math.floor(Math.log2(count))
  to.setUint32(0, from.getUint32(4))
  ;[count, 16 * 2 ** power, power, 16 * (count - 2 ** power)].forEach((value, i) => { to.setUint16(4 + 2 * i, value) })
  let at = head
  tables.forEach(({ tag, sum, data }, i) => {
    ;[tag, sum, at, data.length].forEach((value, k) => { to.setUint32(12 + 16 * i + 4 * k, value) })
    out.set(data, at)
    at += whole(data.length)
  })
  return out
}
