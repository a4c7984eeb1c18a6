import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { benchDayView } from '../../../src/edition/views/bench-day.ts'
import { conditionsPage } from '../../../src/edition/views/conditions-page.ts'
import { criterionPage } from '../../../src/edition/views/criterion-page.ts'
import { studyHead } from '../../../src/edition/views/studies/study-head.ts'
import { q } from '../../core/readings/fixture.ts'
import { setOf } from '../../core/judging/fixture.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { loadStudies, STUDY } from '../../records/studies/study-folder.ts'
import { tinyEdition } from '../tiny-edition.ts'
import type { PropertyKey } from '../../../src/core/measure/properties.ts'
import type { DescribedCondition } from '../../../src/records/records.ts'

const sealed = {
  title: '50 %, 50 °C',
  standing: 'modified' as const,
  replacement: { amount: q('50 %', 'fraction'), by: 'mass' as const },
  water: { 'w/cm': 0.485 },
  'first-day': { in: 'moulds', temperature: q('23 degC', 'temperature') },
  curing: { medium: 'sealed' as const, temperature: q('50 degC', 'temperature') },
  ages: [{ age: readAge('28 d'), within: q('12 h', 'duration') }],
  resistivity: {
    specimen: { shape: 'cube' as const },
    reading: { temperature: q('23 degC', 'temperature'), within: q('2 degC', 'temperature-difference') },
    meter: { ceiling: q('18 kohm', 'resistance') },
  },
}

describe('benchDayView', () => {
  it('sets the record out by stages, with what each does not say', () => {
    const day = benchDayView(sealed, 'SI')
    expect(day?.stages.map(({ label }) => label)).toEqual([
      'First day',
      'Into the bath',
      'Bath',
      'Cooling',
      'To the meter',
      'Specimens',
      'Meter',
      'After the reading',
      'Control',
    ])
    expect(day?.stages[0]).toEqual({
      label: 'First day',
      text: 'Moulds; 23\u00a0°C',
      missing: 'not recorded: temperature of the first day with its tolerance and length of the first day',
    })
    expect(day?.stages[1]).toEqual({
      label: 'Into the bath',
      text: null,
      missing: 'not recorded',
    })
    expect(day?.stages[6]?.text).toBe('Ceiling 18\u00a0kΩ, above which a reading is written > 18\u00a0kΩ')
    // Of 35 details four concern a liquid; mould and ceiling are recorded.
    expect(day?.completeness).toMatch(
      /^2\sof 31 details that reproduce the test are recorded; not recorded: /,
    )
  })
  it('has nothing to say without a resistivity test', () => {
    const { resistivity: _, ...strengthOnly } = sealed
    expect(benchDayView(strengthOnly, 'SI')).toBeNull()
  })
  it('stands on the page of the conditions in the units of the site', () => {
    const { site } = tinyEdition([], [])
    const page = (units: 'SI' | 'US') =>
      conditionsPage({
        conditions: new Map([['hot', sealed satisfies DescribedCondition]]),
        announcedConditions: new Map(),
        site: { ...site, units },
      }).described[0]?.benchDay?.stages[2]?.text
    expect(page('SI')).toBe('Sealed at 50\u00a0°C')
    expect(page('US')).toBe('Sealed at 122\u00a0°F')
  })
})

describe('a set of criteria', () => {
  const page = (property: PropertyKey, conditions: readonly [string, DescribedCondition][]) => {
    const clause = { clause: 'c', property, condition: 'c311', age: readAge('28 d'), 'at-least': '75 %' }
    const set = setOf([clause, { ...clause, clause: 'd' }], { id: 'set' })
    return criterionPage(tinyEdition([], [], { conditions: new Map(conditions) }), set).unreproducible
  }
  it('names once a condition of resistivity that its record does not reproduce, and leads to it', () => {
    expect(page('resistivity-index', [['c311', sealed]])).toEqual([
      {
        condition: { text: '50\u00a0%, 50\u00a0°C', href: '/a/conditions/#c311' },
        words: '2 of 31 details that reproduce the resistivity test are recorded',
      },
    ])
  })
  it('says nothing of a clause on strength', () => {
    expect(page('strength-activity-index', [['c311', sealed]])).toEqual([])
  })
})

describe('a study’s condition', () => {
  it('leads to the record that it is, where it names one', () => {
    const study = (condition: string) =>
      loadStudies({
        'S-1.yaml': `${STUDY.replace('{ replacement: 30 % }', condition)}readings:\n  - { material: Q1, age: 28 d, strength-activity-index: [80 %] }\n`,
      })
    const record = (condition: string) => {
      const { records, diagnostics } = study(condition)
      expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
      return studyHead(computeEdition(records, { program: 'test' }).study('S-1')).conditions[0]?.record
    }
    expect(record('{ replacement: 50 %, record: warm }')).toBe('conditions/#warm')
    expect(record('{ replacement: 50 % }')).toBeNull()
  })
})
