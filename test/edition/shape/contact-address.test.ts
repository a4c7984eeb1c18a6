import { describe, expect, it } from 'vitest'
import { mailAddress, telephoneAddress } from '../../../src/edition/shape/contact-address.ts'

describe('telephoneAddress', () => {
  it.each([
    // RFC 3966, section 6: tel:+1-201-555-0123 and tel:+12015550123 are the same number.
    ['+1-201-555-0123', 'tel:+12015550123'],
    ['(201) 555.0123', 'tel:2015550123'],
    // RFC 3966, section 3: extension = ";ext=" 1*phonedigit.
    ['+1 201 555 0123 ext. 42', 'tel:+12015550123;ext=42'],
  ])('takes %s', (written, address) => {
    expect(telephoneAddress(written)).toBe(address)
  })
  it('gives digits alone for anything else, so that no other address can come out of it', () => {
    expect(telephoneAddress('javascript:alert(1)//')).toBe('tel:1')
  })
})

describe('mailAddress', () => {
  it.each([
    ['office@hill.example', 'mailto:office@hill.example'],
    // RFC 6068, section 2: what is not unreserved is percent-encoded.
    ['office+lots@hill.example', 'mailto:office%2Blots@hill.example'],
    ['a?bcc=b@hill.example', 'mailto:a%3Fbcc%3Db@hill.example'],
  ])('takes %s', (written, address) => {
    expect(mailAddress(written)).toBe(address)
  })
})
