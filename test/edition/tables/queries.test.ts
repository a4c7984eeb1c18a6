/** The ready queries, run by DuckDB over the demo's tables and held against what the Edition itself counts. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { DuckDBConnection } from '@duckdb/node-api'
import { std } from 'mathjs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { PROGRAM, ROOT } from '../../../src/commands/program.ts'
import { everyClauseOutcome } from '../../../src/core/criteria/verdict.ts'
import { yearOf } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import type { Edition, LotEntry } from '../../../src/edition/shape/edition.ts'
import { lotOfShipment } from '../../../src/edition/shape/possible-lots.ts'
import { whenItLeft } from '../../../src/edition/shape/when-it-left.ts'
import { partitions, TABLES } from '../../../src/edition/tables/partitions.ts'
import { queriesOf, tableNames } from '../../../src/edition/tables/queries.ts'
import { tableSources } from '../../../src/edition/tables/table-sources.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { connected, from, type Row, rowsOf, withTables } from '../in-duckdb.ts'
import { finding, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'
import { allShipments } from '../all-shipments.ts'

let edition: Edition
let lots: LotEntry[]
let connection: DuckDBConnection
const answers = new Map<string, Row[]>()
/** Rows of each table, named as for a copy of the site and by their description over the web. */
const counts = new Map<string, Row[]>()
let described: Row[] = []

beforeAll(async () => {
  const { records } = loadRecords(join(ROOT, 'content'))
  edition = forAudience(computeEdition(records, { program: PROGRAM }), 'public')
  lots = [...edition.lots.keys()].map((id) => edition.lot(id))
  connection = await connected()
  await withTables(edition, async (folder) => {
    const file = (name: string) => readFileSync(join(folder, 'data/queries', `${name}.sql`), 'utf8')
    await connection.run(from(folder, file('duckdb')))
    for (const { id } of queriesOf(edition)) answers.set(id, await rowsOf(connection, file(id)))
    const count = TABLES.map(({ name }) => `SELECT '${name}' AS name, count(*) AS rows FROM ${name}`)
    counts.set('duckdb', await rowsOf(connection, count.join(' UNION ALL ')))
    described = await rowsOf(
      connection,
      "SELECT table_name, column_name, data_type FROM duckdb_columns() WHERE schema_name = 'main' AND NOT internal ORDER BY table_name, column_index",
    )
    const other = await connected()
    // The folder stands in for the address of the site.
    await other.run(file('duckdb-over-http').replace(/(?<=SET VARIABLE site = ')[^']*/, `${folder}/`))
    counts.set('duckdb-over-http', await rowsOf(other, count.join(' UNION ALL ')))
    other.closeSync()
  })
})
afterAll(() => connection.closeSync())

const answer = (id: string): Row[] => answers.get(id) ?? []
const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0)
const mean = (numbers: readonly number[]) => sum(numbers) / numbers.length
const spread = (numbers: readonly number[]) => Number(std([...numbers]))

/** Groups by the text that `by` gives, in the order of those texts. */
const grouped = <T>(items: readonly T[], by: (item: T) => string) =>
  [...Map.groupBy(items, by)].sort(([a], [b]) => (a < b ? -1 : 1))

describe('the tables', () => {
  it('hold a row for each lot, verdict, clause, result, shipment and finding of the Edition', () => {
    const ofLots = (count: (lot: LotEntry) => number) => sum(lots.map(count))
    const findings =
      ofLots((lot) => lot.findings.length) +
      sum([...edition.sources.keys()].map((id) => edition.source(id).findings.length)) +
      sum([...edition.laboratories.keys()].map((id) => edition.laboratoryFindings(id).length))
    const expected = [
      { name: 'lots', rows: edition.lots.size },
      { name: 'verdicts', rows: ofLots((lot) => lot.verdicts.length) },
      {
        name: 'clauses',
        rows: ofLots((lot) =>
          sum(lot.verdicts.map(({ clauses }) => [...everyClauseOutcome(clauses)].length)),
        ),
      },
      { name: 'results', rows: ofLots((lot) => lot.results.length) },
      { name: 'shipments', rows: allShipments(edition).length },
      { name: 'findings', rows: findings },
      {
        name: 'controls',
        rows: sum([...edition.controls.values()].map(({ results }) => Math.max(1, results.length))),
      },
    ]
    expect(counts.get('duckdb')).toEqual(expected)
    expect(counts.get('duckdb-over-http')).toEqual(expected)
  })

  it('give each result its value to the last bit, with the text of the record beside it', async () => {
    const rows = await tableRows(
      'SELECT lot, result, role, value, written, unit, year FROM results',
      'results',
    )
    const expected = lots.flatMap((lot) =>
      lot.results.map(({ key, role, value, written, unit }) => ({
        lot: lot.id,
        result: key,
        role,
        value,
        written: written?.replaceAll('\u00a0', ' ') ?? null,
        unit,
        year: Number(yearOf(lot.sampled)),
      })),
    )
    const inOrder = (all: readonly object[]) => all.map((row) => JSON.stringify(row)).sort()
    expect(inOrder(rows)).toEqual(inOrder(expected))
  })

  it('have the columns, types and keys that are described', () => {
    const types = { text: 'VARCHAR', integer: 'INTEGER', double: 'DOUBLE', boolean: 'BOOLEAN', date: 'DATE' }
    const expected = TABLES.flatMap(({ name, columns, keys }) => [
      ...columns.map((column) => [name, column.name, types[column.type]]),
      ...keys.map((key) => [name, key, key === 'year' ? 'INTEGER' : 'VARCHAR']),
    ])
    const found = described.map((row) => [row['table_name'], row['column_name'], row['data_type']])
    expect(grouped(found, ([table]) => String(table))).toEqual(grouped(expected, ([table]) => String(table)))
  })

  it('have no column whose name an engine reserves', async () => {
    const reserved = await rowsOf(
      connection,
      "SELECT keyword_name AS name FROM duckdb_keywords() WHERE keyword_category = 'reserved'",
    )
    // Those of Trino (trino.io, "Reserved keywords") and of Spark in ANSI mode that DuckDB does not reserve.
    const others =
      'alter between by cube cross current_date current_time deallocate delete drop escape exists extract full group grouping inner insert is join json_table left like listagg localtime natural normalize prepare recursive right rollup skip trim uescape using values any both leading minus some start time user'
    const names = new Set([...reserved.map(({ name }) => name), ...others.split(' ')])
    expect(names.size).toBeGreaterThan(70)
    const columns = TABLES.flatMap((table) => [
      table.name,
      ...table.keys,
      ...table.columns.map(({ name }) => name),
    ])
    expect(columns.filter((name) => names.has(name))).toEqual([])
  })
})

/** Rows of one table, read anew. */
async function tableRows(sql: string, name: string): Promise<Row[]> {
  return withTables(edition, async (folder) => {
    const own = await connected()
    const source = tableSources(edition).find(({ id }) => id === 'duckdb')?.sql ?? ''
    await own.run(from(folder, source))
    const rows = await rowsOf(own, sql)
    own.closeSync()
    expect(rows.length, name).toBeGreaterThan(0)
    return rows
  })
}

describe('the ready queries', () => {
  it('are those that the tables can answer', () => {
    const [lot] = [tinyLot('ash/1', { findings: [finding('ash/1')] })]
    const small = tinyEdition([tinySource('ash')], lot === undefined ? [] : [lot])
    expect([...tableNames(small)]).toEqual(['lots', 'results', 'findings'])
    expect(queriesOf(small).map(({ id }) => id)).toEqual([
      'failures-by-source-and-year',
      'producer-against-agency',
      'separation-of-indices',
      'questions-by-check',
    ])
    expect(queriesOf(tinyEdition([], []))).toEqual([])
  })

  it('count failures by source and year as the rows of lots do', () => {
    const groups = grouped(
      [...edition.lots.values()],
      ({ source, sampled }) => `${source} ${yearOf(sampled)}`,
    )
    const expected = groups.map(([group, own]) => {
      const failing = own.filter(({ outcomes }) => outcomes[0]?.outcome === 'does-not-meet')
      const [source = '', year = ''] = group.split(' ')
      return {
        source,
        year: Number(year),
        lots: own.length,
        failures: failing.length,
        withdrawn: own.filter(({ state }) => state === 'withdrawn').length,
        failures_t: sum(failing.map(({ tonnes }) => tonnes)),
      }
    })
    expect(sum(expected.map(({ failures }) => failures))).toBeGreaterThan(10)
    expect(answer('failures-by-source-and-year')).toEqual(expected)
  })

  it('count the clauses that fail as verdicts name them', () => {
    const failing = lots.flatMap((lot) => {
      const [governing] = lot.verdicts
      return [...everyClauseOutcome(governing?.clauses ?? [])]
        .filter((clause) => clause.outcome === 'does-not-meet' && governing?.decidedBy.includes(clause.id))
        .filter(({ kind }) => kind !== 'group')
        .map(({ id, property, condition, age }) => ({
          lot: lot.id,
          test: [governing?.criterion, id, property, condition, age?.text].join('|'),
        }))
    })
    const expected = grouped(failing, ({ test }) => test).map(([test, own]) => [
      test,
      new Set(own.map(({ lot }) => lot)).size,
    ])
    const found = answer('clauses-that-fail').map(
      ({ criterion, clause, property, condition, age, lots: count }) => [
        [criterion, clause, property, condition, age].join('|'),
        count,
      ],
    )
    expect(found.sort()).toEqual(expected.sort())
    // A limit on the residue and one on its difference from the mean are two clauses, with two units.
    expect(found.map(([test]) => test)).toContain('c618-12a|residue-uniformity|residue-45um||')
  })

  it('compare an agency with a producer on the lots that both have tested', () => {
    const tests = lots
      .filter(({ state }) => state !== 'withdrawn')
      .flatMap((lot) =>
        grouped(
          lot.results.filter(({ valid, censored }) => valid && censored === undefined),
          ({ property, condition = '', age }) => `${lot.source}|${property}|${condition}|${age?.text ?? ''}`,
        ).flatMap(([test, own]) => {
          const of = (role: string) => own.filter((one) => one.role === role).map(({ value }) => value)
          const [producer, agency] = [of('producer'), of('verification')]
          return producer.length === 0 || agency.length === 0
            ? []
            : [{ test, producer: mean(producer), agency: mean(agency) }]
        }),
      )
    const found = answer('producer-against-agency')
    const groups = grouped(tests, ({ test }) => test)
    expect(groups.length).toBeGreaterThan(5)
    expect(
      found
        .map(({ source, property, condition, age }) => [source, property, condition, age].join('|'))
        .sort(),
    ).toEqual(groups.map(([test]) => test))
    for (const [test, own] of groups) {
      const row = found.find(
        ({ source, property, condition, age }) => [source, property, condition, age].join('|') === test,
      )
      const differences = own.map(({ producer, agency }) => agency - producer)
      expect(row?.['lots'], test).toBe(own.length)
      expect(row?.['mean_difference'], test).toBeCloseTo(mean(differences), 9)
      if (own.length > 1) expect(row?.['sd_of_difference'], test).toBeCloseTo(spread(differences), 9)
    }
  })

  it('give no more lots than the comparison of a source does, which pairs samples', () => {
    const source = answer('producer-against-agency')[0]?.['source']
    const agency = edition.source(String(source)).agency()
    const paired = new Set(agency?.pairs.map(({ lot }) => lot))
    const most = answer('producer-against-agency').filter((row) => row['source'] === source)
    expect(paired.size).toBeGreaterThan(1)
    expect(Math.max(...most.map((row) => Number(row['lots'])))).toBe(paired.size)
  })

  it('measure how far two sources lie apart, for each index at its condition and age', () => {
    const values = lots
      .filter(({ state }) => state !== 'withdrawn')
      .flatMap((lot) =>
        grouped(
          lot.results.filter(
            ({ valid, role, property }) =>
              valid && role === 'producer' && /^(strength-activity|resistivity)-index$/.test(property),
          ),
          ({ property, condition, age }) => `${property}|${condition}|${age?.text}`,
        ).map(([test, own]) => ({ test, source: lot.source, value: mean(own.map(({ value }) => value)) })),
      )
    const found = answer('separation-of-indices')
    const pairs = grouped(values, ({ test }) => test).flatMap(([test, own]) => {
      const sources = grouped(own, ({ source }) => source).filter(([, all]) => all.length > 1)
      return sources.flatMap(([a, ofA], place) =>
        sources.slice(place + 1).map(([b, ofB]) => {
          const [x, y] = [ofA, ofB].map((all) => all.map(({ value }) => value))
          const apart = Math.abs(mean(x ?? []) - mean(y ?? []))
          const pooled = Math.sqrt((spread(x ?? []) ** 2 + spread(y ?? []) ** 2) / 2)
          return { key: `${test}|${a}|${b}`, separation: apart / pooled }
        }),
      )
    })
    const byKey = new Map(
      found.map((row) => [
        ['property', 'condition', 'age', 'source_a', 'source_b'].map((name) => row[name]).join('|'),
        row['separation'],
      ]),
    )
    expect(pairs.length).toBeGreaterThan(20)
    expect([...byKey.keys()].sort()).toEqual(pairs.map(({ key }) => key).sort())
    for (const { key, separation } of pairs) expect(byKey.get(key), key).toBeCloseTo(separation, 6)
  })

  it('count shipments before completion as pages tell of each shipment', () => {
    const said = whenItLeft(edition)
    const groups = grouped(allShipments(edition), ({ source, date }) => `${source} ${yearOf(date)}`)
    const expected = groups.map(([group, own]) => {
      const single = own.filter((shipment) => lotOfShipment(shipment) !== null)
      const told = (words: RegExp) =>
        single.filter((shipment) => words.test(said(shipment).join('; '))).length
      return [
        group,
        own.length,
        told(/before the .* results? w(?:as|ere) known/i),
        told(/without a certificate/i),
        told(/known not to meet/i),
        own.length - single.length,
      ]
    })
    const found = answer('shipments-before-completion')
    const counted = found.map((row) => [
      `${row['source']} ${row['year']}`,
      row['shipments'],
      row['before_completion'],
      row['without_certificate'],
      row['known_not_to_meet'],
      row['not_of_one_lot'],
    ])
    expect(counted).toEqual(expected)
    const early = found.reduce((total, row) => total + Number(row['before_completion']), 0)
    expect(early).toBeGreaterThan(100)
    expect(sum(found.map((row) => Number(row['not_of_one_lot'])))).toBeGreaterThan(0)
  })

  it('give the scatter of control batches', () => {
    const results = [...edition.controls.values()].flatMap(({ record, results: own }) =>
      own
        .filter(({ valid }) => valid)
        .map(({ property, age, value }) => ({
          test: [record.laboratory, record.condition, property, age?.text].join('|'),
          value,
        })),
    )
    const found = answer('control-batches')
    const groups = grouped(results, ({ test }) => test)
    expect(
      found
        .map((row) => ['laboratory', 'condition', 'property', 'age'].map((name) => row[name]).join('|'))
        .sort(),
    ).toEqual(groups.map(([test]) => test))
    for (const [test, own] of groups) {
      const row = found.find(
        (one) => ['laboratory', 'condition', 'property', 'age'].map((name) => one[name]).join('|') === test,
      )
      const values = own.map(({ value }) => value)
      expect(row?.['batches'], test).toBe(values.length)
      expect(row?.['mean'], test).toBeCloseTo(mean(values), 9)
      if (values.length > 1)
        expect(row?.['variation_percent'], test).toBeCloseTo((100 * spread(values)) / mean(values), 9)
    }
  })

  it('count questions by check', () => {
    const all = [
      ...lots.flatMap(({ findings }) => findings),
      ...[...edition.sources.keys()].flatMap((id) => edition.source(id).findings),
      ...[...edition.laboratories.keys()].flatMap((id) => edition.laboratoryFindings(id)),
    ]
    expect(answer('questions-by-check')).toEqual(
      grouped(all, ({ reason, severity }) => `${reason.code} ${severity}`).map(([group, own]) => {
        const [audit_check = '', severity = ''] = group.split(' ')
        return {
          audit_check,
          severity,
          findings: own.length,
          about: new Set(own.map(({ about }) => about)).size,
        }
      }),
    )
  })
})

describe('the statements for Spark and Trino', () => {
  it('name each table with its columns and its folder', () => {
    for (const id of ['spark', 'trino']) {
      const sql = tableSources(edition).find((source) => source.id === id)?.sql ?? ''
      for (const { name, columns, keys } of TABLES) {
        expect(sql, id).toMatch(new RegExp(`BUCKET/data/tables/${name}/?'`))
        const [, body = ''] =
          new RegExp(`${id === 'spark' ? 'VIEW' : 'EXISTS'} ${name} \\(\n([^]*?)\n\\)`).exec(sql) ?? []
        expect(body.split('\n').map((line) => line.trim().split(' ')[0])).toEqual([
          ...columns.map((column) => column.name),
          ...keys,
        ])
      }
    }
  })

  it('are left out with a table that has no file', () => {
    const sources = tableSources(tinyEdition([tinySource('ash')], [tinyLot('ash/1')]))
    expect(sources.map(({ id }) => id)).toEqual(['duckdb', 'duckdb-over-http', 'spark', 'trino'])
    for (const { sql } of sources) {
      expect(sql).toContain('lots')
      expect(sql).not.toContain('shipments')
    }
  })
})

describe('the files', () => {
  it('are the same bytes for the same records, read anew', () => {
    const { records } = loadRecords(join(ROOT, 'content'))
    const again = forAudience(computeEdition(records, { program: PROGRAM }), 'public')
    const columns = (of: Edition) => [...partitions(of)].map(({ path, columns: make }) => [path, make()])
    expect(columns(again)).toEqual(columns(edition))
  })
})

describe('a value that is known only within bounds', () => {
  /** Two figures, and one that stands for "at least". */
  const values = '(VALUES (100.0, NULL), (104.0, NULL), (900.0, 900.0)) AS v (value, value_low)'
  const bounded = async (id: string, tables: readonly string[]) => {
    const own = await connected()
    try {
      for (const table of tables) await own.run(table)
      return await rowsOf(own, queriesOf(edition).find((query) => query.id === id)?.sql ?? '')
    } finally {
      own.closeSync()
    }
  }

  it('is left out of the scatter of control batches: the mean of 100 and 104 is 102', async () => {
    const [row, ...others] = await bounded('control-batches', [
      `CREATE TABLE controls AS SELECT 'north' AS laboratory, 'c311' AS condition, 'resistivity' AS property,
        '28 d' AS age, 'ohm m' AS unit, true AS valid, NULL::DOUBLE AS value_high, v.* FROM ${values}`,
    ])
    expect([row?.['batches'], row?.['mean']].map(Number)).toEqual([2, 102])
    expect(others).toEqual([])
  })

  it('is left out of the comparison with the agency and of the separation of indices', async () => {
    const results = `CREATE TABLE results AS SELECT s.source, s.source || v.value AS lot, r.role,
        'resistivity-index' AS property, 'c311' AS condition, '28 d' AS age, '%' AS unit, true AS valid,
        NULL AS censored, NULL::DOUBLE AS value_high, v.value + s.more AS value, v.value_low
      FROM ${values}, (VALUES ('ash', 0), ('tuff', 50)) AS s (source, more),
        (VALUES ('producer'), ('verification')) AS r (role)`
    const lotsOf = "CREATE TABLE lots AS SELECT DISTINCT lot, 'complete' AS state FROM results"
    const agency = await bounded('producer-against-agency', [results, lotsOf])
    expect(
      agency.map((row) => [row['source'], ...['lots', 'producer_mean'].map((name) => Number(row[name]))]),
    ).toEqual([
      ['ash', 2, 102],
      ['tuff', 2, 152],
    ])
    // Both scatter by √8 from lot to lot, and their means lie 50 apart.
    const [separation] = await bounded('separation-of-indices', [results, lotsOf])
    expect(Number(separation?.['separation'])).toBeCloseTo(50 / Math.sqrt(8), 9)
  })
})
