import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../../src/edition/compute.ts'
import { studyPage } from '../../../../src/edition/views/studies/study-page.ts'
import { loadRecords } from '../../../../src/records/load.ts'

const { screening } = studyPage(computeEdition(loadRecords('content').records, { program: 'test' }), 'S-01')

describe('the lines over temperature', () => {
  it('join all temperatures that differ in nothing else, whichever record of the register one of them names', () => {
    const drawn = screening?.temperatureLines.map(({ title, xTicks }) => [
      /\d+/.exec(title)?.[0],
      xTicks.map((tick) => Number.parseFloat(tick)),
    ])
    expect(drawn).toEqual([
      ['30', [23, 40, 50]],
      ['50', [23, 40, 50]],
      ['30', [23, 40, 50]],
      ['50', [23, 40, 50]],
    ])
  })
})
