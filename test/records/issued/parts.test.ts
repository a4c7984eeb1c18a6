import { describe, expect, it } from 'vitest'
import { canonicalJson, digestOf } from '../../../src/records/issued/digest.ts'
import { partsOf, withoutParts, withParts } from '../../../src/records/issued/parts.ts'

const whole = { format: 2, shared: { words: 'a' }, lot: { b: 1 }, controls: {}, printed: { shared: 'kept' } }

describe('parts of a document', () => {
  it('lie once each under the digest of their canonical form', () => {
    const { document, parts } = withoutParts(whole)
    const shared = digestOf(canonicalJson({ words: 'a' }))
    expect(document).toMatchObject({ format: 2, shared: { part: shared }, printed: { shared: 'kept' } })
    expect(parts.get(shared)).toBe('{"words":"a"}')
    expect(partsOf(document as object)).toEqual([...parts.keys()])
  })
  it('come back to their places', () => {
    const { document, parts } = withoutParts(whole)
    const back = withParts(document as object, (digest) => JSON.parse(parts.get(digest) ?? 'null') as unknown)
    expect(back).toEqual(whole)
  })
})
