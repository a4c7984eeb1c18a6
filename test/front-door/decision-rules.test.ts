/** A decision rule set alone, clause by clause, and what is said once where it can decide nothing. */
import { describe, expect, it } from 'vitest'
import { ruleNotes } from '../../src/edition/shape/rule-notes.ts'
import { criterionPage } from '../../src/edition/views/criterion-page.ts'
import { told, TUFF } from './fields-front-door.ts'
import { lotText, SHARED } from './front-door.ts'

const BASE = `title: Base
edition: "1"
kinds: [raw-natural-pozzolan]
clauses:
  - { clause: so3, property: SO3, at-most: 5.0 % }
  - { clause: mgo, property: MgO, at-most: 4.0 % }
  - { clause: oxides, any-of: [{ clause: iron, property: Fe2O3, at-most: 9.0 % }, { clause: alumina, property: Al2O3, at-least: 20.0 % }] }
  - { clause: moist, property: moisture, at-most: 3.0 % }
`
const RULE = 'decision-rule: { guarded: 2, agreed-in: contract 7 }'
const supplement = (lines: string) =>
  `title: Supplement\nedition: "1"\nkinds: [raw-natural-pozzolan]\nextends: { set: base }\n${lines}\n`

/** The laboratory states 0.2 percentage points for SO3, so that the guard is 0.4, and nothing for the others. */
const judged = (lines: string) =>
  told({
    'site.yaml': (new Map(SHARED).get('site.yaml') ?? '').replace('[alone]', '[own, base]'),
    'criteria/base.yaml': BASE,
    'criteria/own.yaml': supplement(lines),
    'sources/tuff.yaml': TUFF,
    'lots/tuff/L1.yaml': lotText({ analyses: 'SO3: 4.7 %, MgO: 2.0 %, Fe2O3: 5.0 %, Al2O3: 15.0 %' }, 0),
  })
const outcomes = ({ report }: ReturnType<typeof judged>, set = 'own') => {
  const verdict = report.lots[0]?.verdicts.find(({ criterion }) => criterion === set)
  return Object.fromEntries((verdict?.clauses ?? []).map(({ id, outcome }) => [id, outcome]))
}

describe('a supplement that changes the decision rule alone', () => {
  it('needs no clauses, and judges those of its base under the rule', () => {
    const found = judged(RULE)
    expect(found.diagnostics).toEqual([])
    // 4.7 + 0.4 = 5.1 lies above 5.0.
    expect(outcomes(found)).toEqual({
      so3: 'inconclusive',
      mgo: 'inconclusive',
      oxides: 'inconclusive',
      moist: 'inconclusive',
    })
    expect(outcomes(found, 'base')).toEqual({ so3: 'meets', mgo: 'meets', oxides: 'meets', moist: 'meets' })
  })
  it('sets it for one clause with set-decision-rule, and the limit stays the base’s', () => {
    const found = judged(`clauses: [{ change: set-decision-rule, clause: so3, ${RULE} }]`)
    expect(found.diagnostics).toEqual([])
    expect(outcomes(found)).toEqual({ so3: 'inconclusive', mgo: 'meets', oxides: 'meets', moist: 'meets' })
    const own = found.internal.criteria.get('own')
    expect(own?.clauses[0]).toMatchObject({ layer: 'base', changes: [{ change: 'set-decision-rule' }] })
  })
  it('takes clauses out of the set’s own rule with as-specified, those of a group together', () => {
    const plain = 'decision-rule: { as-specified: yes }'
    const found = judged(
      `${RULE}\nclauses: [${['mgo', 'oxides', 'moist'].map((id) => `{ change: set-decision-rule, clause: ${id}, ${plain} }`).join(', ')}]`,
    )
    expect(outcomes(found)).toEqual({ so3: 'inconclusive', mgo: 'meets', oxides: 'meets', moist: 'meets' })
    const [so3, mgo] = criterionPage(found.internal, own(found)).clauses
    expect(so3?.sentence).not.toContain('decision rule')
    expect(mgo?.sentence).toContain('; decision rule: as specified')
    expect(mgo?.changes[0]?.words).toBe('Given a decision rule of its own')
  })
})

const own = ({ internal }: ReturnType<typeof judged>) => {
  const set = internal.criteria.get('own')
  if (set === undefined) throw new RangeError('own needs the set on record')
  return set
}

describe('a rule over properties without an uncertainty', () => {
  const NOTE =
    'no laboratory on record states an uncertainty for Magnesium oxide, Iron oxide, Aluminium oxide and Moisture content, so the guard band of 2 standard uncertainties agreed in contract 7 cannot decide these clauses and they stay inconclusive for every lot; state the repeatability in the laboratory’s record, or give these clauses “decision-rule: { as-specified: yes }”'

  it('is told once of the set, by clause, and on its page', () => {
    const found = judged(RULE)
    expect(ruleNotes(found.internal, own(found), (id) => id)).toEqual([NOTE])
    expect(criterionPage(found.internal, own(found)).undecided).toEqual([
      `${NOTE.charAt(0).toUpperCase()}${NOTE.slice(1)}.`,
    ])
  })
  it('is told of a lot in one sentence, not clause by clause', () => {
    const verdict = judged(RULE).report.lots[0]?.verdicts.find(({ criterion }) => criterion === 'own')
    expect(verdict?.reasons.filter((text) => text.includes('no uncertainty stated'))).toEqual([
      'no uncertainty stated, which the decision rule needs: Magnesium oxide, Iron oxide, Aluminium oxide and Moisture content',
    ])
  })
  it('is no matter where every clause can be decided, or nobody agreed to the rule', () => {
    const alone = judged(`clauses: [{ change: set-decision-rule, clause: so3, ${RULE} }]`)
    expect(ruleNotes(alone.internal, own(alone), (id) => id)).toEqual([])
    const unagreed = judged('decision-rule: { guarded: 2 }')
    expect(ruleNotes(unagreed.internal, own(unagreed), (id) => id)).toEqual([])
  })
})
