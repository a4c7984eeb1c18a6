/** What a mill's sheet need not hold: a record of the control, its cement, a clock time. */
import { describe, expect, it } from 'vitest'
import { laboratoryPageView } from '../../src/edition/views/laboratory-page.ts'
import { plainSpaces } from '../../src/words/sentences.ts'
import { told } from './fields-front-door.ts'
import { lotText, SHARED } from './front-door.ts'

const COOL = new Map(SHARED).get('conditions/cool.yaml') ?? ''
const tested = (test: string, files: Readonly<Record<string, string>> = {}) => {
  const found = told({
    'lots/tuff/L1.yaml': lotText(
      { on: '2026-01-03', more: `tests:\n  - { sample: C, condition: cool, laboratory: quay, ${test} }` },
      0,
    ),
    ...files,
  })
  expect(found.diagnostics).toEqual([])
  return found
}
const index = ({ report }: ReturnType<typeof told>, age = '7 d') => {
  const found = report.lots[0]?.results.find(
    ({ key }) => key.startsWith('strength-activity-index') && key.includes(age),
  )
  return found && { value: found.value, interval: found.interval, valid: found.valid, reasons: found.reasons }
}
const CUBES = 'specimens: { a: 25.0 MPa, b: 26.0 MPa, c: 27.0 MPa }'
const clock = (date: string) => `${date}T09:00`

describe('a control that is known by its strength alone', () => {
  it('gives the index without an interval, and says so', () => {
    // The mean of 25, 26 and 27 MPa over 32.5 MPa is 26/32.5 = 80 %.
    const found = tested(
      `cast: ${clock('2026-01-05')}, strength: [{ age: 7 d, tested: ${clock('2026-01-12')}, ${CUBES}, control: 32.5 MPa }]`,
    )
    expect(index(found)).toEqual({
      value: 80,
      interval: null,
      valid: true,
      reasons: ['control known by its stated strength alone, 32.5 MPa'],
    })
    const { printed, readings } = found.internal.lot('tuff/L1').certificate()
    expect(printed.mortars.mortars[0]?.line).toContain('no control batch on record')
    expect(plainSpaces(JSON.stringify(printed.tables))).toContain('test 26.0 MPa, control 32.5 MPa')
    expect(readings[0]?.readings[0]?.facts).toContain('control 32.5 MPa')
  })
  it('is another at each age', () => {
    const found = tested(
      `cast: ${clock('2026-01-05')}, strength: [{ age: 7 d, tested: ${clock('2026-01-12')}, mean: 24.0 MPa, control: 32.0 MPa }, { age: 28 d, tested: ${clock('2026-02-02')}, mean: 36.0 MPa, control: 40.0 MPa }]`,
    )
    expect([index(found)?.value, index(found, '28 d')?.value]).toEqual([75, 90])
  })
  it('must have the strength that the condition asks of a control', () => {
    const demanding = {
      'conditions/cool.yaml': `${COOL}control: { strength: { age: 7 d, at-least: 35 MPa } }\n`,
    }
    const test = (strength: string) =>
      `cast: ${clock('2026-01-05')}, strength: [{ age: 7 d, tested: ${clock('2026-01-12')}, ${CUBES}, control: ${strength} }]`
    expect(index(tested(test('36.0 MPa'), demanding))?.valid).toBe(true)
    const weak = index(tested(test('32.5 MPa'), demanding))
    expect([weak?.value, weak?.valid]).toEqual([80, false])
    expect(weak?.reasons.at(-1)).toContain('control as stated: ')
  })
})

describe('a mortar without any control', () => {
  it('has its strength and no index, and awaits none once it is tested', () => {
    const { report } = tested(
      `cast: ${clock('2026-01-05')}, strength: [{ age: 7 d, tested: ${clock('2026-01-12')}, ${CUBES} }]`,
    )
    const [lot] = report.lots
    expect(lot?.results.map(({ property }) => property)).toEqual(['moisture', 'compressive-strength'])
    expect(JSON.stringify(report)).not.toContain('overdue by')
    expect(lot?.findings.filter(({ check }) => check === 'result-overdue')).toEqual([])
  })
  it('awaits both while it is not', () => {
    const { internal } = tested(`cast: 2026-03-05, strength: [{ age: 7 d }]`)
    expect(internal.lot('tuff/L1').planned.map(({ property }) => property)).toEqual([
      'compressive-strength',
      'strength-activity-index',
    ])
  })
})

describe('a control without the lot of its cement, cast on a day without a clock', () => {
  const control = {
    'controls/K1.yaml':
      'condition: cool\nlaboratory: quay\ncement: { type: portland }\ncast: 2026-01-05\nstrength: [{ age: 7 d, tested: 2026-01-12, mean: 32.5 MPa, of: 3 }]\n',
  }
  const found = tested(
    `control: K1, cast: 2026-01-05, strength: [{ age: 7 d, tested: 2026-01-12, ${CUBES} }]`,
    control,
  )

  it('gives the index, valid, with the age verified to the day', () => {
    expect([index(found)?.value, index(found)?.valid]).toEqual([80, true])
    expect(index(found)?.reasons).toContain('the age cannot be verified to the hour: a clock time is missing')
  })
  it('is printed with what is on record', () => {
    const { printed } = found.internal.lot('tuff/L1').certificate()
    expect(printed.mortars.mortars[0]?.line).toContain('with cement lot not recorded (portland)')
    expect(laboratoryPageView(found.internal, 'quay').batches.map(({ cement }) => cement)).toEqual([''])
  })
  it('is in no way asked about as one of its cement', () => {
    const asked = found.report.sources.flatMap(({ findings }) => findings.map(({ check }) => check))
    expect(asked).not.toContain('cement-unbridged')
    expect(asked).not.toContain('control-batch-off')
  })
})
