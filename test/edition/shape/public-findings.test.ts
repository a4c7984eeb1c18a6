/** What a public edition tells of findings where a lot of the source is a draft: computed from records. */
import { beforeAll, describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { DRAFT, SOURCE, writeFixtureContent } from '../../site/fixture-content.ts'

/** Fourteen lots, of which one is a draft; two shipments of each left before its 28 d result. */
const SHOWN = 13

function editions(): [whole: Edition, shown: Edition] {
  const content = writeFixtureContent((texts) => {
    const site = texts.get('site.yaml') ?? ''
    texts.set('site.yaml', site.replace('drafts: yes', 'drafts: no'))
  })
  const { records, diagnostics } = loadRecords(content)
  expect(diagnostics).toEqual([])
  const whole = computeEdition(records, { program: 'test' })
  return [whole, forAudience(whole, 'public')]
}

function early(edition: Edition) {
  const own = edition
    .source(SOURCE)
    .findings.filter(({ reason }) => reason.code === 'shipped-before-completion')
  return own.map(({ reason }) => reason.params)
}

describe('a source of which one lot is a draft', () => {
  let whole: Edition
  let shown: Edition
  beforeAll(() => {
    ;[whole, shown] = editions()
  })

  it('counts as many flags of each check as are listed', () => {
    const listed = [
      ...shown.source(SOURCE).findings,
      ...[...shown.lots.keys()].flatMap((id) => shown.lot(id).findings),
    ]
    const flags = Map.groupBy(listed, ({ reason }) => reason.code)
    const { looks, lots } = shown.source(SOURCE).checks
    expect(lots).toBe(SHOWN)
    expect(flags.size).toBeGreaterThan(2)
    expect(new Map(looks.filter(({ found }) => 0 < found).map(({ check, found }) => [check, found]))).toEqual(
      new Map([...flags].map(([check, own]) => [check, own.length])),
    )
  })

  it('has looked at what is shown alone', () => {
    const looked = ({ source }: Edition, check: string) =>
      source(SOURCE).checks.looks.find((one) => one.check === check)?.looked
    const both = (check: string) => [looked(whole, check), looked(shown, check)]
    expect(both('shipped-without-certificate')).toEqual([SHOWN + 1, SHOWN])
    expect(both('shipped-before-completion')).toEqual([2 * (SHOWN + 1), 2 * SHOWN])
  })

  it('is asked of its published shipments, and of no other', () => {
    expect(early(whole)).toMatchObject([{ of: 2 * (SHOWN + 1), lots: SHOWN + 1 }])
    expect(early(shown)).toMatchObject([{ count: 2 * SHOWN, of: 2 * SHOWN, lots: SHOWN }])
    expect(JSON.stringify(shown.source(SOURCE).findings)).not.toContain(DRAFT)
  })
})
