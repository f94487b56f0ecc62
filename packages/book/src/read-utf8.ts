const chunk = 8192

/** Strict UTF-8: no overlong forms, no surrogates, nothing past U+10FFFF. `stray` is the first byte that does not belong. */
export function readUtf8(bytes: Uint8Array, start = 0): { readonly text: string, readonly stray?: number } {
  const parts: string[] = []
  let units: number[] = []
  for (let at = start; at < bytes.length;) {
    const lead = bytes[at]!
    const length = lead < 0x80 ? 1 : lead >= 0xc2 && lead < 0xe0 ? 2 : lead >= 0xe0 && lead < 0xf0 ? 3 : lead >= 0xf0 && lead < 0xf5 ? 4 : 0
    let code = length === 1 ? lead : lead & (0x7f >> length)
    for (let i = 1; i < length; i++) {
      const next = bytes[at + i]
      if (next === undefined || (next & 0xc0) !== 0x80) return { text: '', stray: at }
      code = code << 6 | next & 0x3f
    }
    const shortest = [0, 0, 0x80, 0x800, 0x10000][length]!
    if (length === 0 || code < shortest || code > 0x10ffff || (code >= 0xd800 && code < 0xe000)) return { text: '', stray: at }
    if (code < 0x10000) units.push(code)
    else units.push(0xd800 + (code - 0x10000 >> 10), 0xdc00 + (code & 0x3ff))
    if (units.length >= chunk) { parts.push(String.fromCharCode(...units)); units = [] }
    at += length
  }
  return { text: parts.join('') + String.fromCharCode(...units) }
}
