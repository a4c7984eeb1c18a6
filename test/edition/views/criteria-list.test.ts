import { listedSetName, scopeWords } from '../../../src/words/outcomes.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { criteriaList } from '../../../src/edition/views/criteria-list.ts'
import { setOf } from '../../core/judging/fixture.ts'
import { tinyEdition } from '../tiny-edition.ts'
import { base, supplement } from './criterion-fixture.ts'

const listed = (...sets: Criterion[]) =>
  criteriaList(tinyEdition([], [], { criteria: new Map(sets.map((set) => [set.id, set])) }))

describe('criteriaList', () => {
  it('names each set with its edition, classes, kinds and what it rests on', () => {
    expect(listed(base, supplement)).toEqual([
      {
        name: 'VALE 1: Trial set',
        href: '/a/criteria/base/',
        edition: '1',
        on: null,
        classes: 'F, C',
        kinds: 'coal fly ash, raw natural pozzolan',
        standing: 'as read or set, not checked against the published standard',
      },
      expect.objectContaining({ name: 'Agency rules', on: 'VALE 1, edition 1' }),
    ])
  })
  it('says what the limits are worth', () => {
    const written: WrittenClause[] = [
      { clause: 'so3', property: 'SO3', 'at-most': '5.0 %', basis: { memory: 'recalled' } },
    ]
    const unconfirmed = setOf(written)
    const confirmed = setOf(written, {
      confirmed: { by: 'M. Okafor', date: readMoment('2026-01-05'), edition: '1' },
    })
    expect(listed(unconfirmed)[0]).toMatchObject({
      classes: 'none',
      standing: 'trial: some limits from memory, unconfirmed',
    })
    expect(listed(confirmed)[0]?.standing).toBe('confirmed against the standard')
    expect(listed({ ...confirmed, supersededBy: 'later' })[0]?.standing).toBe(
      'confirmed against the standard; a later edition is on record',
    )
    expect(listed({ ...confirmed, lacks: ['the optional clauses'] })[0]?.standing).toBe(
      'confirmed against the standard; leaves out 1 part of the specification',
    )
  })
  it('heads a set that judges activity alone', () => {
    const index = { property: 'strength-activity-index' as const, condition: 'c311', age: readAge('28 d') }
    const activity = setOf([{ clause: 'sai', ...index, 'at-least': '75 %' }])
    expect(listed(activity)[0]?.standing).toMatch(
      /; activity clause only; loss on ignition, fineness and others not judged$/,
    )
    expect(listedSetName(activity)).toMatch(/\(activity clause only\)$/)
    expect(scopeWords(base)).toBeNull()
  })
})
