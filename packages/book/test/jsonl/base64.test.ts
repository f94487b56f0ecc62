import fc from 'fast-check'
import { expect, it } from 'vitest'
import { base64, bytesOfBase64 } from '../../src/jsonl/base64.ts'

// RFC 4648, section 10: test vectors. V
it.each([['', ''], ['f', 'Zg=='], ['fo', 'Zm8='], ['foo', 'Zm9v'], ['foob', 'Zm9vYg=='], ['fooba', 'Zm9vYmE='], ['foobar', 'Zm9vYmFy']])('%j is %j', (plain, text) => {
  expect(base64(Buffer.from(plain))).toBe(text)
  expect(Buffer.from(bytesOfBase64(text)!).toString()).toBe(plain)
})
it('agrees with Node, and reads back, at any length', () => {
  fc.assert(fc.property(fc.oneof(fc.uint8Array({ maxLength: 9 }), fc.nat(70_000).map(length => Uint8Array.from({ length }, (_, i) => i * 157))), (bytes) => {
    const text = base64(bytes)
    expect(text).toBe(Buffer.from(bytes).toString('base64'))
    expect(Buffer.compare(Buffer.from(bytesOfBase64(text)!), Buffer.from(bytes))).toBe(0)
  }), { seed: 4648, numRuns: 60 })
})
it.each(['Zg=', 'Zg', 'Zh==', 'Zm9=', 'Z===', '====', 'Zm 9', 'Zm9v\n', 'Zm9é'])('refuses %j', (text) => { expect(bytesOfBase64(text)).toBeUndefined() })
