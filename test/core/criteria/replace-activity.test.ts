import { describe, expect, it } from 'vitest'
import { isUnconfirmed } from '../../../src/core/criteria/criterion.ts'
import { withActivityOf } from '../../../src/core/criteria/replace-activity.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { evidenceOf, index, result, setOf } from '../judging/fixture.ts'

const sai = (more: Partial<WrittenClause> = {}): WrittenClause => ({
  clause: 'activity',
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
  ...more,
})
const hot: WrittenClause = {
  clause: 'activity',
  property: 'strength-activity-index',
  condition: 'modified-50c',
  age: readAge('28 d'),
  'at-least': '70 %',
}
const resistivity: WrittenClause = {
  clause: 'resistivity',
  property: 'resistivity-index',
  condition: 'modified-50c',
  age: readAge('28 d'),
  'at-least': '250 %',
}
const loi: WrittenClause = { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }
const water: WrittenClause = { clause: 'water', property: 'water-requirement', 'at-most': '105 %' }

const governing = setOf([loi, sai(), water], { id: 'governing' })
const either = setOf([{ clause: 'either', 'any-of': [hot, resistivity] }], { id: 'either' })

/** A lot as a bench sheet would give it: 78 % at 23 °C, 66 % and 240 % at 50 °C, 4.0 % lost, 102 % water. */
const LOT = evidenceOf([
  result('loss-on-ignition', 4),
  index('28 d', 78),
  result('water-requirement', 102),
  result('strength-activity-index', 66, { condition: 'modified-50c', age: readAge('28 d') }),
  result('resistivity-index', 240, { condition: 'modified-50c', age: readAge('28 d') }),
])

describe('withActivityOf', () => {
  it('withActivityOf puts the other set’s demand on activity where the own one stood, and keeps every other clause', () => {
    const composed = withActivityOf(governing, either)
    expect(composed?.clauses.map(({ id }) => id)).toEqual(['loi', 'either', 'water'])
    expect([composed?.id, composed?.activityOf?.id]).toEqual(['governing+either', 'either'])
  })

  it('withActivityOf changes one hand-worked lot: 78 ≥ 75 meets, 66 < 70 and 240 < 250 do not', () => {
    const composed = withActivityOf(governing, either) ?? governing
    expect(judge(governing, LOT)).toMatchObject({ outcome: 'meets' })
    expect(judge(composed, LOT)).toMatchObject({
      outcome: 'does-not-meet',
      decidedBy: ['activity', 'resistivity'],
    })
  })

  it('withActivityOf leaves a lot that fails on its loss on ignition failing by that clause', () => {
    const composed = withActivityOf(governing, setOf([resistivity], { id: 'r' })) ?? governing
    const lossy = evidenceOf([
      result('loss-on-ignition', 6.4),
      result('water-requirement', 102),
      result('resistivity-index', 300, { condition: 'modified-50c', age: readAge('28 d') }),
    ])
    expect(judge(composed, lossy)).toMatchObject({ outcome: 'does-not-meet', decidedBy: ['loi'] })
  })

  it('withActivityOf keeps uniformity of the index and clauses for information, and takes none of them over', () => {
    const uniform = sai({
      clause: 'uniform',
      'at-least': undefined,
      'deviation-from': { preceding: 10 },
      'magnitude-at-most': '5 percentage points',
    })
    const informing = sai({ clause: 'told', information: 'yes' })
    const set = setOf([uniform, informing, sai()], { id: 'governing' })
    expect(withActivityOf(set, either)?.clauses.map(({ id }) => id)).toEqual(['uniform', 'told', 'either'])
    expect(withActivityOf(set, setOf([uniform, informing], { id: 'none' }))).toBeNull()
  })

  it('withActivityOf tells a clause taken over from an own one of the same id', () => {
    const twin = setOf([{ ...loi, clause: 'either' }, sai()], { id: 'governing' })
    expect(withActivityOf(twin, either)?.clauses.map(({ id }) => id)).toEqual(['either', 'either+either'])
  })

  it('withActivityOf gives none where a class would be left without any demand on activity, nor without a common kind', () => {
    const byClass = setOf([sai({ 'at-least': { I: '90 %', II: '80 %' } })], {
      id: 'jis',
      classes: ['I', 'II'],
    })
    expect(withActivityOf(governing, byClass)).toBeNull()
    expect(withActivityOf(governing, setOf([hot], { id: 'slag', kinds: ['slag'] }))).toBeNull()
    expect(withActivityOf(setOf([loi], { id: 'no-activity' }), either)).toBeNull()
  })

  it('withActivityOf keeps to the other set’s decision rule, and is unconfirmed where that set is', () => {
    const guarded = setOf([hot], {
      id: 'guarded',
      'decision-rule': { guarded: 2, 'agreed-in': 'contract 7' },
    })
    expect(withActivityOf(governing, guarded)?.clauses[1]?.decisionRule).toMatchObject({
      rule: 'guarded',
      k: 2,
    })
    const remembered = setOf([{ ...hot, basis: { memory: 'a talk' } }], { id: 'remembered' })
    expect([
      isUnconfirmed(governing),
      isUnconfirmed(withActivityOf(governing, remembered) ?? governing),
    ]).toEqual([false, true])
  })
})
