import { readAge } from '../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { clauseSentence } from '../../src/words/clause-sentences.ts'
import type { Clause } from '../../src/core/criteria/criterion.ts'
import type { WrittenClause, WrittenCriterion } from '../../src/records/criteria/written-criterion.ts'
import { setOf } from '../core/judging/fixture.ts'

function sentence(written: WrittenClause, more: Partial<WrittenCriterion> = {}): string {
  const set = setOf([written], more)
  return clauseSentence(set.clauses[0] as Clause, set, (id) => (id === 'c311' ? '20 %, 23 °C' : id))
}

describe('clauseSentence', () => {
  it('clauseSentence names property, condition, age, limit and digits, and leaves its source to the set', () => {
    expect(
      sentence(
        {
          clause: 'a',
          property: 'strength-activity-index',
          condition: 'c311',
          age: readAge('7 d'),
          'at-least': '75 %',
          basis: { read: 'S1' },
        },
        { sources: { S1: 'abstract with tables' } },
      ),
    ).toBe(
      'Strength activity index, 20 %, 23 °C, 7 d must be at least 75 %, after rounding to the digits of the limit.',
    )
  })

  it('clauseSentence gives the limit of each class', () => {
    expect(
      sentence(
        {
          clause: 'a',
          property: 'oxide-sum',
          'at-least': { F: '70.0 %', C: '50.0 %' },
          basis: { memory: 'recalled' },
        },
        { classes: ['F', 'C'] },
      ),
    ).toBe(
      'SiO₂ + Al₂O₃ + Fe₂O₃ must be at least 70.0 % for class F, at least 50.0 % for class C, after rounding to the digits of the limit; limit from memory, to be confirmed: recalled.',
    )
  })

  it('clauseSentence says what a deviation is taken from and in which steps it is compared', () => {
    expect(
      sentence({
        clause: 'a',
        property: 'density',
        'deviation-from': { preceding: 10 },
        relative: 'yes',
        'magnitude-at-most': '5 %',
      }),
    ).toBe(
      'The deviation of Density from the mean of up to 10 preceding results, as a percentage of it, must be at most 5 % in magnitude, after rounding to the nearest 0.1 %.',
    )
  })

  it('clauseSentence says for whom and when a clause holds, and whether it counts', () => {
    expect(
      sentence(
        {
          clause: 'a',
          property: 'soundness-expansion',
          'at-most': '10 mm',
          classes: ['F'],
          when: [{ property: 'free-CaO', above: '1.5 %' }],
          optional: 'yes',
        },
        { classes: ['F'] },
      ),
    ).toBe(
      'For class F, where free calcium oxide is above 1.5 %, Soundness, Le Chatelier must be at most 10 mm, after rounding to the digits of the limit; optional, judged only when requested.',
    )
  })

  it('clauseSentence names the approval, the rule and who set a limit', () => {
    const written: WrittenClause = {
      clause: 'a',
      property: 'loss-on-ignition',
      'at-most': '6.0 %',
      approval: { 'at-most': '12.0 %', evidence: 'performance records' },
      several: 'mean',
      'decision-rule': { guarded: 1.645, 'agreed-in': 'provision 7' },
      'set-by': { user: 'the owner' },
    }
    expect(sentence(written)).toBe(
      'Loss on ignition must be at most 6.0 %, without rounding; of several results, the mean counts; by approval at most 12.0 %, on evidence: performance records; decision rule: guarded by 1.645 standard uncertainties, agreed in provision 7; limit set by the user: the owner.',
    )
  })

  it('clauseSentence lists the members of a group with their ids, and a clause without limit as to be reported', () => {
    expect(
      sentence({
        clause: 'g',
        'any-of': [
          { property: 'SO3', below: '5.0 %' },
          { property: 'CaO', report: 'yes' },
        ],
      }),
    ).toBe(
      'At least one of these must hold: (g-1) Sulfur trioxide must be below 5.0 %, after rounding to the digits of the limit; (g-2) Calcium oxide must be reported; no limit.',
    )
  })
})
