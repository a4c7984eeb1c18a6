import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import {
  plainText,
  plainValue,
  sharedPlainText,
  sharedPlainValue,
} from '../../../src/edition/shape/plain-text.ts'

const MOMENTS = ['2026-03-11', '2026-03-11T09:20', '2026-03-11T23:59:30-05:00'].flatMap((text) =>
  [0, 120, -300].map((sortedAt) => readMoment(text, sortedAt)),
)

/** Names of members that a text uses itself, which a record may have as well. */
const MARKS = [' moment', ' age', ' number', ' same', ' itself', ' ', 'sortedAt', 'hours', 'toJSON']

const leaf = fc.oneof(
  fc.string(),
  fc.double(),
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom(...MOMENTS),
  fc.constantFrom(readAge('28 d'), readAge('72 h')),
)

it('a plain value is the same after it was a text, moments, ages and odd numbers included', () => {
  const { value } = fc.letrec((tie) => ({
    value: fc.oneof(
      { depthSize: 'small' },
      leaf,
      fc.array(tie('value')),
      fc.dictionary(
        fc.oneof(
          fc.string({ unit: 'binary-ascii' }).filter((key) => key !== '__proto__'),
          fc.constantFrom(...MARKS),
        ),
        tie('value'),
        {
          noNullPrototype: true,
        },
      ),
    ),
  }))
  fc.assert(
    fc.property(value, (given) => {
      const text = plainText(given)
      expect(text).not.toContain('\n')
      expect(plainValue(text)).toStrictEqual(given)
      const several = [given, { given }, given]
      expect(sharedPlainValue(sharedPlainText(several))).toStrictEqual(several)
    }),
  )
})

it('equal quantities, moments and ages are written once and are one object when they are read', () => {
  const lot = () => ({
    load: { kind: 'force', value: 78.4, unit: 'kN', written: '78.4 kN', decimals: 1 },
    cast: readMoment('2026-03-11T09:20', 120),
    age: readAge('28 d'),
    other: { value: -0, unit: 'kN' },
  })
  const text = sharedPlainText([lot(), lot()])
  expect(text.match(/78\.4 kN/g)).toHaveLength(1)
  expect(text.match(/09:20/g)).toHaveLength(1)
  const [first, second] = sharedPlainValue(text) as ReturnType<typeof lot>[]
  expect(first).toStrictEqual(lot())
  expect(second?.load).toBe(first?.load)
  expect(second?.cast).toBe(first?.cast)
  expect(second?.age).toBe(first?.age)
})

it.each(MARKS)('an object whose only member is called "%s" is the same after it was a text', (mark) => {
  const load = { value: 61.1, unit: 'kN' }
  for (const given of [
    { [mark]: load },
    { [mark]: { [mark]: load } },
    [{ [mark]: 3 }],
    { [mark]: [load, load] },
  ]) {
    expect(plainValue(plainText(given))).toStrictEqual(given)
    expect(sharedPlainValue(sharedPlainText([given, given]))).toStrictEqual([given, given])
  }
})
