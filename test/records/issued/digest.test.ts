import { describe, expect, it } from 'vitest'
import { canonicalJson, digestOf } from '../../../src/records/issued/digest.ts'

describe('canonicalJson', () => {
  // RFC 8785, section 3.2.2 and 3.2.3: the printed example and its canonical form.
  it('gives the canonical form printed in RFC 8785, section 3.2.3', () => {
    const value = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    ) as unknown
    expect(canonicalJson(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    )
  })
  it('refuses what JSON cannot hold', () => {
    expect(() => canonicalJson(undefined)).toThrow(RangeError)
  })
  it('does not depend on the order in which keys were set', () => {
    expect(canonicalJson({ b: 1, a: [2, { d: 3, c: 4 }] })).toBe(
      canonicalJson({ a: [2, { c: 4, d: 3 }], b: 1 }),
    )
  })
})

describe('digestOf', () => {
  // FIPS 180-4 example (NIST, "SHA256.pdf" of the Cryptographic Standards examples): one-block message "abc".
  it('gives the digest that NIST prints for "abc"', () => {
    expect(digestOf('abc')).toBe('sha256-ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })
})
