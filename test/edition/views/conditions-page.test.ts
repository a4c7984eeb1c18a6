import { describe, expect, it } from 'vitest'
import { conditionsPage } from '../../../src/edition/views/conditions-page.ts'
import { loadRecords } from '../../../src/records/load.ts'

const { records } = loadRecords('content')
const page = conditionsPage(records)

describe('conditionsPage', () => {
  it('describes a condition as its record has it: replacement, curing and what a test must fulfil', () => {
    const c311 = page.described.find(({ id }) => id === 'c311')
    expect(c311?.title).toBe('20\u00a0%, 23\u00a0°C, constant flow')
    expect(c311?.standing.startsWith('Described by a standard.')).toBe(true)
    const texts = new Map(c311?.particulars.map(({ label, text }) => [label, text]))
    expect(texts.get('Replacement')).toBe('20\u00a0% of the cement by mass')
    expect(texts.get('Curing')).toBe(
      'saturated lime water, 23\u00a0°C ± 2\u00a0°C, control and test together',
    )
    expect(c311?.demands[0]).toBe(
      'Control and test cast on the same day; alkalis of the control cement at least 0.50\u00a0% and at most 0.80\u00a0%; control at least 35\u00a0MPa at 28\u00a0d: an index is flagged where this is not met.',
    )
  })
  it('says how much of a resistivity test its record reproduces', () => {
    const day = (own: string) => page.described.find(({ id }) => id === own)?.benchDay
    expect(day('modified-50c')?.completeness).toBe('All 35 details that reproduce the test are recorded.')
    expect(day('modified-50c')?.stages.every(({ missing }) => missing === null)).toBe(true)
    expect(day('c311')?.completeness).toMatch(/^4\sof 28 details/)
    expect(day('c989')).toBeNull()
  })
  it('says of a condition that is only named that no mortar can be recorded at it', () => {
    const announced = conditionsPage({
      site: records.site,
      conditions: new Map(),
      announcedConditions: new Map([
        ['later', { title: 'autoclave', standing: 'details-to-be-entered', designation: 'X 1' }],
      ]),
    })
    expect(announced).toEqual({
      described: [],
      announced: [
        {
          id: 'later',
          title: 'Autoclave',
          standing:
            'Details to be entered from the standard (X 1); no mortar can be recorded at it until they are.',
          note: null,
        },
      ],
    })
  })
})
