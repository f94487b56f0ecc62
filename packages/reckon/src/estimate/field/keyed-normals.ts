import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

const size = 1 << 16

/** So many equally likely standard normal values, spread by their own law and scaled to variance 1; the largest is 4.2. */
const table = /* @__PURE__ */ (() => {
  const values = Float64Array.from({ length: size }, (_, i) => normalQuantile((i + 0.5) / size, 0, 1))
  const scale = Math.sqrt(size / values.reduce((sum, value) => sum + value * value, 0))
  return values.map(value => value * scale)
})()

/** Two words from a name (FNV-1a, forwards and backwards). */
export function wordsOf(key: string): readonly [number, number] {
  let a = 0x811c9dc5, b = 0x811c9dc5
  for (let i = 0; i < key.length; i++) {
    a = Math.imul(a ^ key.charCodeAt(i), 0x01000193)
    b = Math.imul(b ^ key.charCodeAt(key.length - 1 - i), 0x01000193)
  }
  return [a, b]
}

/**
 * Fills `out` with standard normal numbers that depend on the seed and the name alone, so that a place keeps its numbers when others come
 * or go and a figure does not jump when one sample is added.
 * Source: Doty-Humphrey's small fast counting generator, 32 bits (from memory); each half of a word looks up one of 65,536 normal values.
 */
export function keyedNormals(seed: number, key: string, out: Float32Array): void {
  const [first, second] = wordsOf(key)
  let a = seed | 0, b = first, c = second, d = 1
  // The loop is written out, not called: it is the innermost of a simulation. Its first rounds only mix.
  for (let i = -30; i < out.length; i += 2) {
    const word = (a + b + d) | 0
    d = (d + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + word) | 0
    if (i < 0) continue
    out[i] = table[word & 0xffff]!
    if (i + 1 < out.length) out[i + 1] = table[word >>> 16]!
  }
}
