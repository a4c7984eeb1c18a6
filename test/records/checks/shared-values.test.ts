import { expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { SharedValues } from '../../../src/records/checks/shared-values.ts'

const percent = (value: number, more: object = {}) => ({
  ...{ kind: 'fraction', value, unit: '%', written: `${value} %`, decimals: 1 },
  ...more,
})

const record = () => ({
  unit: 'MPa',
  list: ['MPa', '23 °C', { note: `${'twice nobody writes it, '.repeat(4)}\u{1f9f1} and \ud800 alone` }],
  results: [
    percent(2.4),
    percent(2.4),
    percent(2.4, { censored: 'below' }),
    percent(2.4, { decimals: 2 }),
    percent(2.4, { remark: 'wet' }),
  ],
  on: [readMoment('2026-03-08'), readMoment('2026-03-08'), readMoment('2026-03-08T14:30+01:00')],
  none: null,
  flag: true,
  '': '',
})

it('values stay what they are, wherever they stand, and those that are the same are held once', () => {
  const [first, second] = [record(), record()]
  const values = new SharedValues()
  for (const one of [first, second, undefined]) values.shareIn(one)
  expect(first).toEqual(record())
  expect(second).toEqual(record())
  // One that says more than a quantity stays apart.
  expect(new Set([...first.results, ...second.results]).size).toBe(3 + 2)
  expect(new Set([...first.on.slice(0, 2), ...second.on.slice(0, 2)]).size).toBe(1)
  expect(first.on.map(String)).toEqual(['2026-03-08', '2026-03-08', '2026-03-08T14:30+01:00'])
})
