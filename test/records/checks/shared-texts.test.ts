import { expect, it } from 'vitest'
import { SharedTexts } from '../../../src/records/checks/shared-texts.ts'

it('texts stay what they are, wherever they stand', () => {
  const long = `${'a note that nobody writes twice, '.repeat(4)}with \u{1f9f1} and \ud800 alone`
  const record = {
    unit: 'MPa',
    list: ['MPa', '23 °C', { written: '23 °C', value: 23, long }],
    none: null,
    flag: true,
    '': '',
  }
  const before = structuredClone(record)
  const texts = new SharedTexts()
  texts.shareIn(record)
  texts.shareIn({ unit: 'MPa' })
  texts.shareIn(undefined)
  expect(record).toEqual(before)
  expect(record.list[2]).toHaveProperty('long', long)
})
