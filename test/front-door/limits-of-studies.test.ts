/**
 * A clause that names the study which set its limit, from the text of the records to the diagnostics and the page of
 * the criterion.
 *
 * By hand: one batch each, control 40 MPa; inert 40 and 50 %, reactive 80 and 100 %. The middle of the gap is
 * √(50 × 80) = 63.2 %, in steps of 5 % the threshold 65 %. None of two: at most 1 − √0.05 = 78 %; one of two: √0.95 = 97 %.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import { criterionPage } from '../../src/edition/views/criterion-page.ts'
import { loadRecords } from '../../src/records/load.ts'

const BASE = resolve(import.meta.dirname, '../diagnostics/base')
const STUDY = readFileSync(join(BASE, 'studies/heat.yaml'), 'utf8')
const INDEX = 'property: strength-activity-index, age: 7 d'

function read(clause: string, study = STUDY) {
  const folder = join(mkdtempSync(join(tmpdir(), 'limits-of-studies-')), 'content')
  cpSync(BASE, folder, { recursive: true })
  writeFileSync(join(folder, 'studies/heat.yaml'), study)
  writeFileSync(
    join(folder, 'criteria/strength.yaml'),
    `title: Strength\nedition: trial\nkinds: [raw-natural-pozzolan]\nclauses:\n  - ${clause}\n`,
  )
  const { records, diagnostics } = loadRecords(folder)
  rmSync(folder, { recursive: true })
  // A plan without a digest has a warning of its own.
  const ofLimits = diagnostics.filter(({ code }) => code !== 'plan-digest')
  return { records, told: ofLimits.map(({ severity, message }) => `${severity}: ${message}`) }
}

const clauseOf = (condition: string, limit: string, setBy: string) =>
  `{ clause: index, ${INDEX}, condition: ${condition}, at-least: ${limit}, set-by: { ${setBy} } }`

describe('a limit set by a study', () => {
  it.each([
    ['agrees with it', clauseOf('warm', '65 %', 'study: heat, condition: H'), []],
    [
      'is another than its threshold',
      clauseOf('warm', '60 %', 'study: heat, condition: H'),
      ['warning: the limit is 60 %, and the threshold of the study heat at H, 7 d is 65 %'],
    ],
    [
      'is asked at an age that it has not read',
      clauseOf('warm', '65 %', 'study: heat, condition: H, age: 28 d'),
      [
        'warning: the age is 7 d for the clause, and 28 d in H of the study heat',
        'warning: the study heat has no strength-activity-index at H, 28 d',
      ],
    ],
    ['names no condition, and nothing is compared', clauseOf('warm', '60 %', 'study: heat'), []],
    [
      'is a member of a group that names the study',
      `{ clause: g, set-by: { study: heat, condition: H }, any-of: [{ ${INDEX}, condition: warm, at-least: 50 % }, { property: loss-on-ignition, at-most: 6.0 % }] }`,
      ['warning: the limit is 50 %, and the threshold of the study heat at H, 7 d is 65 %'],
    ],
  ])('%s', (_, clause, told) => {
    expect(read(clause).told).toEqual(told)
  })
  it('names a study of another kind', () => {
    const robin = STUDY.replace('kind: screening', 'kind: interlaboratory')
    expect(read(clauseOf('warm', '65 %', 'study: heat, condition: H'), robin).told).toEqual([
      'error: the study heat is of the kind interlaboratory, which sets no threshold',
    ])
  })
  it('has no threshold to agree with where the classes overlap', () => {
    const overlapping = STUDY.replace('16.0 MPa', '36.0 MPa').replace('20.0 MPa', '44.0 MPa')
    expect(read(clauseOf('warm', '65 %', 'study: heat, condition: H'), overlapping).told).toEqual([
      'warning: the study heat gives no threshold at H, 7 d, where classes overlap',
    ])
  })
})

describe('the page of the criterion', () => {
  const evidence = (clause: string) => {
    const { records } = read(clause)
    const edition = computeEdition(records, { program: 'test' })
    const criterion = records.criteria.get('strength')
    if (criterion === undefined) throw new RangeError('needs the set strength')
    return criterionPage(edition, criterion).clauses[0]?.evidence
  }
  it('says beside the clause what the study says of its limit, and leads to the study', () => {
    expect(evidence(clauseOf('warm', '65 %', 'study: heat, condition: H'))).toMatchObject({
      study: { text: 'Study heat', href: '/studies/heat/' },
      sentences: [
        'Its threshold there is 65 %, at which 0 of 2 inert materials pass, at most 78 % of new ones, and 0 of 2 reactive ones fail, at most 78 % of new ones; the limit here is the same.',
        expect.stringContaining('one-sided 95 % bound'),
      ],
    })
  })
  it('says of another limit what it would let through', () => {
    expect(evidence(clauseOf('warm', '45 %', 'study: heat, condition: H'))?.sentences[0]).toContain(
      'the limit here is another, 45 %; at 45 %, 1 of 2 inert materials pass, at most 97 % of new ones, and 0 of 2 reactive ones fail, at most 78 % of new ones.',
    )
  })
  it('says where the conditions differ', () => {
    expect(evidence(clauseOf('cool', '65 %', 'study: heat, condition: H'))?.sentences.slice(2)).toContain(
      'The conditions differ: condition cool here, warm in the study.',
    )
  })
  it('is silent where a user set the limit', () => {
    expect(evidence(clauseOf('warm', '65 %', 'user: the owner'))).toBeNull()
  })
})
