/**
 * The forms of issued documents and their parts. A digest only says that the bytes are those on record: what
 * somebody else wrote and put on record must be told, never drawn or compared.
 */
import { validatorOf } from '../schema/schemas.ts'

/** A document with its parts as references, and each kind of part. */
export type IssuedForm = 'document' | 'shared' | 'lot' | 'controls' | 'private'

/** The JSON value in some bytes where it is of a form of schemas/issued.json; null for anything else. */
export function valueOfForm(form: IssuedForm, bytes: Buffer): unknown {
  const validate = validatorOf(form === 'document' ? 'issued' : `issued/${form}`)
  try {
    const value: unknown = JSON.parse(bytes.toString('utf8'))
    return validate(value) ? value : null
  } catch {
    return null
  }
}
