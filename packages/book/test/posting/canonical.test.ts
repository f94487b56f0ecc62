import { describe, expect, it } from 'vitest'
import { canonicalJson, postingHash, sha256Hex } from '../../src/index.ts'
import { postingsOf } from './sample-postings.ts'

describe('[P1] canonical JSON', () => {
  // RFC 8785, section 3.2.2 and 3.2.3: the sample object and its canonical form. V
  it('is that of the standard\'s own example', () => {
    const sample = JSON.parse(String.raw`{ "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false] }`) as unknown
    expect(canonicalJson(sample)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`)
  })
  // RFC 8785, section 3.2.3: property names sorted by UTF-16 code units. V
  it('sorts names by code units', () => {
    const sample = JSON.parse(String.raw`{ "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis" }`) as object
    expect([...canonicalJson(sample).matchAll(/":"([^"]+)"/g)].map(match => match[1])).toEqual(['Carriage Return', 'One', 'Control',
      'Latin Small Letter O With Diaeresis', 'Euro Sign', 'Emoji: Grinning Face', 'Hebrew Letter Dalet With Dagesh'])
  })
  it('writes minus nought as nought and leaves out what is undefined', () => { expect(canonicalJson({ b: -0, a: undefined })).toBe('{"b":0}') })
  it.each([[Number.NaN], [Infinity], ['\ud800'], [undefined], [() => 1], [{ '\udc00': 1 }]])('refuses %s', (value) => { expect(() => canonicalJson(value)).toThrow(/expected/) })
})

describe('[P1] hash', () => {
  // FIPS 180-4 example: SHA-256 of "abc". V
  it('is SHA-256', () => {
    expect(sha256Hex(new TextEncoder().encode('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })
  it('of everything but itself', () => {
    const [posting] = postingsOf('d1', [{ entry: 'e1', kind: 'sample', set: { bag: 'B-1' } }])
    expect(postingHash(posting!)).toBe(posting!.hash)
    expect(postingHash({ ...posting!, by: 'Someone else' })).not.toBe(posting!.hash)
    expect(postingHash({ ...posting!, hash: 'x' } as never)).toBe(posting!.hash)
  })
})
