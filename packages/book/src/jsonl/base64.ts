const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const alphabet = Uint8Array.from(letters, letter => letter.charCodeAt(0))
const padding = '='.charCodeAt(0)
const none = 255
const values = Uint8Array.from({ length: 128 }, (_, code) => letters.includes(String.fromCharCode(code)) ? letters.indexOf(String.fromCharCode(code)) : none)
const chunk = 0x6000 // a multiple of 3, and few enough letters for one call

/** Bytes as text of 64 letters, with padding. Source: RFC 4648, section 4. */
export function base64(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += chunk) text += group(bytes.subarray(at, at + chunk))
  return text
}

function group(bytes: Uint8Array): string {
  const codes = new Uint16Array(Math.ceil(bytes.length / 3) * 4).fill(padding)
  for (let i = 0, at = 0; i < bytes.length; i += 3, at += 4) {
    const left = bytes.length - i
    const triple = bytes[i]! << 16 | (bytes[i + 1] ?? 0) << 8 | (bytes[i + 2] ?? 0)
    codes[at] = alphabet[triple >> 18]!
    codes[at + 1] = alphabet[triple >> 12 & 63]!
    if (left > 1) codes[at + 2] = alphabet[triple >> 6 & 63]!
    if (left > 2) codes[at + 3] = alphabet[triple & 63]!
  }
  // Spreading a typed array goes through its iterator, four times slower.
  return String.fromCharCode.apply(null, codes as unknown as number[])
}

/** The bytes of such a text; undefined when it is none, or not the one way of writing them. */
export function bytesOfBase64(text: string): Uint8Array | undefined {
  if (text.length % 4 !== 0) return undefined
  const padded = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0
  const bytes = new Uint8Array(text.length / 4 * 3 - padded)
  for (let i = 0, at = 0; i < text.length; i += 4) {
    let triple = 0
    for (let k = 0; k < 4; k += 1) {
      const value = i + k >= text.length - padded ? 0 : values[text.charCodeAt(i + k)] ?? none
      if (value === none) return undefined
      triple = triple << 6 | value
    }
    for (let k = 0; k < 3 && at < bytes.length; k += 1, at += 1) bytes[at] = triple >> (16 - 8 * k) & 255
  }
  // Only one way of padding a byte is right: the bits that are left over are zero.
  return base64(bytes.subarray(Math.max(0, bytes.length - 3 + padded))) === text.slice(-4) ? bytes : undefined
}
