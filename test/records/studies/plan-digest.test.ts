/** Digests of the demo are held against those of `test/core/studies/programme/oracle.py`, made with PyYAML, json and hashlib. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { PLAN_DIGESTS } from '../../../src/demo/studies/plan-digests.ts'
import { planDigest } from '../../../src/records/studies/plan-digest.ts'
import { loadStudies } from './study-folder.ts'
import { planned } from './programme-fixture.ts'

const DEMO = resolve(import.meta.dirname, '../../../content/studies')
/** What S-01 refers to. */
const REFERRED = Object.fromEntries(
  ['S-01-heat.csv', '../conditions/modified-50c.yaml'].map((path) => [
    path,
    readFileSync(resolve(DEMO, path), 'utf8'),
  ]),
)

function load(study: string) {
  const { records, diagnostics } = loadStudies({ 'P.yaml': study, ...REFERRED })
  const record = records.studies.get('P')?.record
  const digests = diagnostics.filter(({ code }) => code === 'plan-digest')
  return {
    digest: record === undefined ? null : planDigest(record),
    told: digests.map(({ severity, code, line }) => `${severity} ${code} ${line}`),
    mends: digests.map(({ mend }) => mend),
  }
}
const READING =
  'readings:\n  - { material: A1, condition: R30-23-A, age: 28 d, strength-activity-index: [80 %] }\n'

describe('planDigest', () => {
  it.each([
    ['S-01', 'sha256-65d7c131fdedfa9ffe03270cdf1ce1edf197578ec3d2805828423abe13e39a5f'],
    ['R-01', 'sha256-87a297477f5394395ac6ecd827653a9026a0c5964028969c3e346524bdf62344'],
    ['G-01', 'sha256-2866d515ddff3479583a23644fc1266508f3311984aebbd0e257481636581cdb'],
    ['G-02', 'sha256-eb31422dba350a8b660840af030c74a56ed706bea716e3fd082576d6fba41f37'],
    ['P-01', 'sha256-6825e85d8cca35ad2f38ba695e3ab4a79080d763c6f7debe6efb5f2d05cde629'],
  ] as const)('of %s is that of its texts as canonical JSON', (id, expected) => {
    const text = readFileSync(resolve(DEMO, `${id}.yaml`), 'utf8').replace(/^table: .*\n/m, '')
    expect(load(text).digest).toBe(expected)
    expect(PLAN_DIGESTS[id]).toBe(expected)
  })
  it('moves with everything that a plan fixes, and with nothing else', () => {
    const whole = planned()
    const { digest } = load(whole)
    const changed = (from: string, to: string) => load(whole.replace(from, to)).digest
    expect(changed('question: Which?', 'question: How?')).not.toBe(digest)
    expect(changed('fixed: 2026-03-01', 'fixed: 2026-03-02')).not.toBe(digest)
    expect(changed('batches: 2', 'batches: 3')).not.toBe(digest)
    expect(changed('5 %', '10 %')).not.toBe(digest)
    expect(changed('class: inert', 'class: weak')).not.toBe(digest)
    expect(changed('shown-by: trial', 'shown-by: guess')).not.toBe(digest)
    expect(changed('w/cm: 0.485', 'w/cm: 0.49')).not.toBe(digest)
    expect(changed('strength: 3', 'strength: 4')).not.toBe(digest)
    // The order of levels says which is low, and so which half of a crossing is cast.
    expect(changed('R30: 30 %, R50: 50 %', 'R50: 50 %, R30: 30 %')).not.toBe(digest)
    expect(changed('title: quartz', 'title: quartz flour')).toBe(digest)
    expect(changed('title: Second round', 'title: Third round')).toBe(digest)
    expect(changed('{ fixed: 2026-03-01, batches: 2,', '{ batches: 2, fixed: 2026-03-01,')).toBe(digest)
    expect(load(`${whole}note: later\n${READING}`).digest).toBe(digest)
  })
})

describe('check', () => {
  const digest = load(planned()).digest ?? ''
  const withDigest = (text: string) => planned().replace('batches: 2,', `batches: 2, digest: ${text},`)
  it('says nothing of a plan without readings, nor of one whose digest agrees', () => {
    expect(load(planned()).told).toEqual([])
    expect(load(`${withDigest(digest)}${READING}`).told).toEqual([])
  })
  it('gives the digest to paste where readings exist and the plan has none', () => {
    const found = load(`${planned()}${READING}`)
    expect(found.told).toEqual(['warning plan-digest 6'])
    expect(found.mends).toEqual([`add under plan: digest: ${digest}`])
  })
  it('warns of a plan that is not what was digested, with readings or without', () => {
    const other = `sha256-${'0'.repeat(64)}`
    expect(load(withDigest(other)).told).toEqual(['warning plan-digest 6'])
    expect(load(withDigest(other)).mends[0]).toContain(`write digest: ${digest}`)
  })
  it('leaves a plan with a fault alone until it is mended', () => {
    expect(load(`${planned().replace('age: 28 d', 'age: 0 d')}${READING}`).told).not.toContain(
      'warning plan-digest 6',
    )
  })
})
