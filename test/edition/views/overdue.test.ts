import { describe, expect, it } from 'vitest'
import { overdueFindings } from '../../../src/core/checks/result-overdue.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import { overdueCount, overdueLines } from '../../../src/edition/views/overdue.ts'
import type { Site } from '../../../src/records/schema/loaded-records.ts'
import { plannedTest, revision, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

/** One lot whose 28 d result never came, as `publish:` of the site lets the public see it. */
function shown(publish: readonly string[]) {
  const due = { ...plannedTest('2026-06-04'), age: readAge('91 d') }
  const planned = [plannedTest('2026-04-02', '2026-04-09'), due]
  const lot = tinyLot('ash/1', { state: 'provisional', revisions: [revision(0, '2026-03-10')], planned })
  const site = { title: 'Register', units: 'SI', criteria: [], publish } as unknown as Site
  const whole = tinyEdition([tinySource('ash')], [{ ...lot, findings: overdueFindings(lot) }], { site })
  return forAudience(whole, 'public')
}

describe('overdueLines', () => {
  it('names what is overdue, and not what is only due, whether findings are published or not', () => {
    for (const [publish, findings] of [
      [['findings'], 1],
      [[], 0],
    ] as const) {
      const edition = shown(publish)
      expect(edition.lot('ash/1').findings).toHaveLength(findings)
      expect(overdueLines(edition, edition.lots.values())).toEqual([
        {
          lot: { text: '1', href: '/a/lots/ash/1/' },
          text: '28 d strength activity index, modified (hot), due 2\u00a0April 2026, overdue since 9\u00a0April 2026',
        },
      ])
      expect(overdueCount([...edition.lots.values()])).toBe(1)
    }
  })
})
