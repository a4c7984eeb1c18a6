import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import type { ResultReason } from '../../../src/core/result/reason.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { checkReport } from '../../../src/edition/writers/check-report.ts'
import { resultData } from '../../../src/edition/writers/lot-data.ts'
import { resultsTable } from '../../../src/edition/writers/tables.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { resultReasonWords } from '../../../src/words/result-reasons.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'test' })

interface Written {
  readonly valid: boolean
  readonly reasons: readonly string[]
  readonly reasonCodes: readonly ResultReason[]
}

const REASONS: readonly ResultReason[] = [
  { code: 'specimen-excluded', params: { mark: 'c', why: 'corner lost' } },
  { code: 'control-fault', params: { control: 'K', reason: { code: 'meter-not-verified', params: {} } } },
]
const result: Result = {
  key: 'strength-activity-index|c311|28 d||north|C',
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  laboratory: 'north',
  sample: 'C',
  sampleKind: 'composite',
  role: 'producer',
  value: 80.25,
  unit: '%',
  decimals: 1,
  interval: { level: 0.95, method: 'fieller', df: 3.94, shape: 'bounded', low: 78.5, high: 82 },
  n: 3,
  tested: readMoment('2026-04-08'),
  valid: false,
  reasons: REASONS,
  working: () => [],
}

describe('resultData', () => {
  it('says each reason as a sentence and as data, in one order', () => {
    expect(resultData(result)).toMatchObject({
      reasons: ['specimen c excluded: corner lost', 'control K: no reading on a known resistor is on record'],
      reasonCodes: REASONS,
    })
    expect(resultData({ ...result, reasons: [] })).toMatchObject({ reasons: [], reasonCodes: [] })
  })
  it('names the method of an interval with its degrees of freedom', () => {
    expect(resultData(result)['interval']).toEqual({
      level: 0.95,
      method: 'Fieller, unequal variances, 3.9 degrees of freedom, within this batch only',
      shape: 'bounded',
      low: 78.5,
      high: 82,
    })
    const { interval: _none, ...bare } = result
    expect(resultData(bare)['interval']).toBeNull()
  })
})

describe('the check report of the demonstration content', () => {
  const report = JSON.parse([...checkReport(edition, [])].join('')) as {
    lots: { id: string; results: Written[] }[]
  }
  const results = report.lots.flatMap((lot) => lot.results)

  it('is as schemas/check.json describes it, codes of reasons included', () => {
    const schema = readFileSync(join(resolve(import.meta.dirname, '../../..'), 'schemas/check.json'), 'utf8')
    const validate = new Ajv2020({ allowUnionTypes: true, strict: false }).compile(
      JSON.parse(schema) as object,
    )
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true)
  })
  it('gives the sentences of its codes, as many and in the same order, after a way through JSON', () => {
    expect(results.map(({ reasonCodes }) => reasonCodes.map(resultReasonWords))).toEqual(
      results.map(({ reasons }) => reasons),
    )
    expect(results.filter(({ reasons }) => reasons.length > 0).length).toBeGreaterThan(10)
  })
  it('gives every result that is not valid a reason', () => {
    expect(results.filter(({ valid, reasons }) => !valid && reasons.length === 0)).toEqual([])
  })
})

describe('resultsTable', () => {
  it('holds the sentences of the reasons and nothing of their data', () => {
    const table = [...resultsTable(edition)].join('')
    expect(table).toContain('is dropped')
    expect(table).not.toContain('[object Object]')
    expect(table).not.toContain('specimen-dropped')
  })
})
