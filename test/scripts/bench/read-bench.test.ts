import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../../src/commands/program.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { readControlAlone } from '../../../src/records/checks/lot-alone.ts'
import { readBench } from '../../../src/scripts/bench/read-bench.ts'
import { nextSpecimensWords } from '../../../src/words/next-specimens.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { benchSite } from './bench-site.ts'

const textOf = (id: string) => readFileSync(resolve(ROOT, 'content/lots', `${id}.yaml`), 'utf8')

describe('readBench', () => {
  it('gives every eighth lot of the demo the results and verdicts of the program, from its file', () => {
    const { edition, records, asOf, source } = benchSite()
    let compared = 0
    for (const id of edition.sources.keys()) {
      const others = source(id)
      for (const [place, { id: lot }] of edition.lotsOf(id).entries()) {
        if (place % 8 !== 0) continue
        const entry = edition.lot(lot)
        for (const verdict of entry.verdicts) {
          const criterion = records.criteria.get(verdict.criterion)
          const reading = readBench({ id: lot, text: textOf(lot), asOf, criterion }, records, others)
          expect(reading.diagnostics).toEqual([])
          expect(
            reading.judged?.results.map(({ result }) => [result.key, result.value, result.valid]),
          ).toEqual(
            entry.results
              .filter(({ role }) => role === 'producer')
              .map((result) => [result.key, result.value, result.valid]),
          )
          expect(JSON.stringify(reading.judged?.verdict)).toBe(JSON.stringify(verdict))
          compared += 1
        }
      }
    }
    expect(compared).toBeGreaterThan(60)
  })

  it('reports a fault in the words of the program and judges nothing', () => {
    const { records, asOf, source } = benchSite()
    const id = 'orrinmoss-ash/OM-2024-010'
    const text = textOf(id).replace('water: 233 g', 'water: 233')
    const reading = readBench({ id, text, asOf, criterion: undefined }, records, source('orrinmoss-ash'))
    expect(reading.judged).toBeUndefined()
    expect(reading.diagnostics).toMatchObject([
      { code: 'quantity-unit', line: 34, column: 12, file: 'lots/orrinmoss-ash/OM-2024-010.yaml' },
    ])
  })

  it('tells a control that the site does not have, and a number that another lot has', () => {
    const { records, asOf, source } = benchSite()
    const id = 'orrinmoss-ash/OM-2030-001'
    const text = `number: OM-2024-010\n${textOf('orrinmoss-ash/OM-2024-010').replace('ML-2024-0703-AL', 'ML-2024-0703-AK')}`
    const reading = readBench({ id, text, asOf, criterion: undefined }, records, source('orrinmoss-ash'))
    expect(reading.diagnostics.map(({ code }) => code)).toEqual(['duplicate-number', 'reference-unknown'])
  })

  it('judges against a control batch whose file was dropped, and reports a fault in one', () => {
    const { records, asOf, source } = benchSite()
    const id = 'orrinmoss-ash/OM-2024-010'
    const own = readFileSync(resolve(ROOT, 'content/controls/ML-2024-0703-AL.yaml'), 'utf8')
    const { control } = readControlAlone({ id: 'OWN-1', text: own }, records)
    if (control === undefined) throw new RangeError('the batch of the demo is sound')
    const controls = new Map([...records.controls, ['OWN-1', control] as const])
    const asked = { id, text: textOf(id).replace('ML-2024-0703-AL', 'OWN-1'), asOf, criterion: undefined }
    const others = source('orrinmoss-ash')
    expect(readBench(asked, records, others).judged).toBeUndefined()
    const indices = readBench(asked, { ...records, controls }, others).judged?.results.filter(
      ({ result }) => result.property === 'strength-activity-index',
    )
    expect(indices?.map(({ result }) => result.valid)).toEqual([true, true])
    const spoiled = readControlAlone(
      { id: 'OWN-1', text: own.replace('condition: c311', 'condition: c312') },
      records,
    )
    expect(spoiled.diagnostics.map(({ code }) => code)).toEqual(['reference-unknown'])
  })

  it('tells what happened after the day of judging', () => {
    const { records, source } = benchSite()
    const id = 'orrinmoss-ash/OM-2024-010'
    const asked = { id, text: textOf(id), asOf: readMoment('2024-07-20'), criterion: undefined }
    const codes = readBench(asked, records, source('orrinmoss-ash')).diagnostics.map(({ code }) => code)
    expect(new Set(codes)).toEqual(new Set(['date-ahead']))
  })

  it('says what the third cube must carry once two are read', () => {
    const { records, asOf, source } = benchSite()
    const id = 'orrinmoss-ash/OM-2024-010'
    const text = textOf(id).replace('a: 82.2 kN, b: 77.0 kN, c: 79.4 kN', 'a: 70.0 kN, b: 72.5 kN')
    const criterion = records.criteria.get('c618-12a')
    const [next, ...others] =
      readBench({ id, text, asOf, criterion }, records, source('orrinmoss-ash')).judged?.next ?? []
    expect(others).toEqual([])
    expect(next).toMatchObject({ condition: 'c311', of: 'strength', read: 2, planned: 3 })
    expect(next?.asRead).toEqual({ kind: 'force', unit: 'kN', decimals: 1, factor: 2.5, plus: 0 })
    expect(next?.limit).toMatchObject({ operator: 'at-least', written: ['75 %'], from: 74.5 })
    // The control's 28 d mean times 0.745 must be the mean of 70.0, 72.5 and the third load over 2500 mm².
    const third = next?.needed.each ?? Number.NaN
    expect(next?.needed.rule).toMatchObject({ of: 3, rangePercent: 8.7 })
    expect((70_000 / 2500 + 72_500 / 2500 + third) / 3).toBeCloseTo(0.745 * (next?.limit?.control ?? 0), 9)
  })

  // By hand, 50 mm cubes: a resistance less 4.1 ohm of contacts times 2500/(1000 x 50) = 0.05 m. The control's 900, 895 and
  // 884 ohm give 44.445 ohm m; 249.5 % of it is 110.890 ohm m; 3 x 110.890 - 0.05 (1961.9 + 1965.9) = 136.281 ohm m,
  // which reads 136.281 / 0.05 + 4.1 = 2729.7 ohm.
  it('says what the third specimen must read between the plates', () => {
    const { records, asOf, source } = benchSite()
    const id = 'quellan-ash/QA-2023-001'
    const text = textOf(id).replace('b: 1970 ohm, c: 1996 ohm', 'b: 1970 ohm')
    const criterion = records.criteria.get('resistivity-option')
    const next = readBench({ id, text, asOf, criterion }, records, source('quellan-ash')).judged?.next ?? []
    expect(next.map(({ of, read, planned, asControl }) => [of, read, planned, asControl])).toEqual([
      ['resistivity', 2, 3, true],
    ])
    expect(next[0]?.needed.each).toBeCloseTo(136.280825, 6)
    expect(next.flatMap(nextSpecimensWords).map(plainSpaces)).toEqual([
      expect.stringContaining('the specimen left must reach 2730 Ω for an index of at least 250 %'),
    ])
  })

  it('says what all specimens of a later age must carry, in the unit of the earlier one', () => {
    const { records, asOf, source } = benchSite()
    const id = 'orrinmoss-ash/OM-2024-010'
    const text = textOf(id).replace(/(\{ age: 28 d), .*?\} \}/, '$1 }')
    const criterion = records.criteria.get('c618-12a')
    const [next, ...others] =
      readBench({ id, text, asOf, criterion }, records, source('orrinmoss-ash')).judged?.next ?? []
    expect(others).toEqual([])
    expect(next).toMatchObject({ of: 'strength', read: 0, planned: 3, asRead: { unit: 'kN' } })
    expect(next?.needed).toEqual({ left: 3, each: 0.745 * (next?.limit?.control ?? Number.NaN) })
  })
})
