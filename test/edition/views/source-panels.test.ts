import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { lotAxisView } from '../../../src/edition/views/source-axis-page.ts'
import { tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const charted = (count: number) => {
  const lots = Array.from({ length: count }, (_, place) =>
    tinyLot(`ash/${place}`, { sampled: readMoment('2026-03-05') }),
  )
  const points = lots.map(({ id, sampled }, place) => ({
    lot: id,
    at: sampled,
    value: place % 7,
    status: 'valid' as const,
  }))
  const series = [{ property: 'loss-on-ignition' as const, unit: '%', decimals: 1, points }]
  return lotAxisView(tinyEdition([tinySource('ash', { series })], lots), 'ash').charts
}

describe('charts of a source', () => {
  it('draw every lot of a long history, and say nothing of the others', () => {
    const charts = charted(2000)
    expect([charts?.newest, charts?.panels[0]?.model.of]).toEqual([null, 2000])
  })

  it('draw the newest lots of a very long one, and say where the others are drawn', () => {
    const charts = charted(2003)
    expect(charts?.panels[0]?.model.of).toBe(2000)
    expect(charts?.panels[0]?.table.rows[0]?.lot).toBe('ash/2002')
    expect(charts?.newest).toBe(
      'The newest 2000 of 2003 lots are drawn; the reports on single years draw those of each year',
    )
  })
})
