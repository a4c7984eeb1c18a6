import { describe, expect, it } from 'vitest'
import { exportMap } from '../../../src/records/export/export-map.ts'
import { exportTables, type ExportedRecords } from '../../../src/records/export/export-tables.ts'
import type { Sheet } from '../../../src/records/import/grid.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { writtenForm } from '../../../src/records/schema/written.ts'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'
import { planned } from '../import/imported.ts'

/** Members that stand in no column. */
const LEFT_OUT = ['revisions', 'answers', 'verification', 'documents', 'imported']

const { records } = loadRecords('content')

function sheetsOf(exported: ExportedRecords): Sheet[] {
  return exportTables(exported).map(({ name, headings, rows }) => ({
    name,
    merged: [],
    rows: [headings.map((text) => ({ kind: 'text', text }) as const), ...rows].map((cells, index) => ({
      row: index + 1,
      cells: new Map(cells.flatMap((cell, column) => (cell === null ? [] : [[column, cell] as const]))),
    })),
  }))
}

function withoutLeftOut(record: object): object {
  return Object.fromEntries(Object.entries(record).filter(([key]) => !LEFT_OUT.includes(key)))
}

describe('exportTables', () => {
  it('gives tables and a map from which an import makes the same records of every lot and control batch', () => {
    const plan = planned({ map: exportMap(exportTables(records), 'all.xlsx'), table: sheetsOf(records) })
    expect(plan.faults).toEqual([])
    const made = new Map(plan.changes.map(({ kind, id, text }) => [`${kind} ${id}`, text]))
    expect(made.size).toBe(records.lots.size + records.controls.size)
    for (const [kind, all] of [
      ['lot', records.lots],
      ['control', records.controls],
    ] as const)
      for (const [id, record] of all) {
        const parsed = parseYaml(made.get(`${kind} ${id}`) ?? '')
        const value = 'value' in parsed ? withoutLeftOut(parsed.value as object) : {}
        expect({ id, ...value }).toEqual({ id, ...withoutLeftOut(writtenForm(record) as object) })
      }
  })

  it('gives one sheet a kind, with units in the headings and text that stays text', () => {
    const [id, lot] = [...records.lots].find(([, { shipments }]) => shipments !== undefined) ?? []
    if (id === undefined || lot === undefined) throw new Error('no lot was shipped')
    const [first, ...rest] = lot.shipments ?? []
    if (first === undefined) throw new Error('no lot was shipped')
    const lots = new Map([[id, { ...lot, shipments: [{ ...first, bill: '007', to: '=1+1' }, ...rest] }]])
    const tables = exportTables({ lots, controls: new Map() })
    expect(tables.map(({ name }) => name)).toEqual(
      ['Lots', 'Samples', 'Results', 'Loads', 'Resistances', 'Shipments'].filter((name) =>
        tables.some((table) => table.name === name),
      ),
    )
    const shipments = tables.find(({ name }) => name === 'Shipments')
    expect(shipments?.headings).toContain(`Mass (${first.mass.unit})`)
    expect(shipments?.rows[0]).toContainEqual({ kind: 'text', text: '007' })
    expect(shipments?.rows[0]).toContainEqual({ kind: 'text', text: '=1+1' })
  })
})
