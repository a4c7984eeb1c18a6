import { cpSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { exportMap } from '../../../src/records/export/export-map.ts'
import { exportTables, type ExportedRecords } from '../../../src/records/export/export-tables.ts'
import type { Sheet } from '../../../src/records/import/grid.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { writtenForm } from '../../../src/records/schema/written.ts'
import { schemaNamed } from '../../../src/records/schema/schemas.ts'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'
import { planned, recordIn } from '../import/imported.ts'

/** Members that stand in no column, as the map beside the tables says. */
const LEFT_OUT = [
  ...['revisions', 'answers', 'verification', 'documents', 'imported', 'facts', 'blend'],
  ...['class-under', 'criteria', 'formerly'],
]

/** A lot and a control batch with every member that a column gives and the demo leaves out. */
const MADE = {
  'lots/tuff/T-9.yaml': `class: "1"
number: "9/26"
produced: { from: 2026-03-02, to: 2026-03-08 }
quantity: 900 t
purchase-order: PO-9
silo: "2"
seals: [S-1, S-2]
feed: { cell: north, moisture: 12 %, note: after rain }
samples:
  - { id: C, kind: composite, taken: { from: 2026-03-02, to: 2026-03-08 } }
analyses:
  - { laboratory: quay, sample: C, tested: 2026-03-11, results: { moisture: 0.4 % }, subcontracted: quay, deviations: by hand }
tests:
  - sample: C
    condition: warm
    laboratory: quay
    cast: 2026-03-10T09:20
    strength:
      - { age: 7 d, tested: 2026-03-17T09:20, specimens: { a: 78.4 kN, b: 77.9 kN }, control: 33.1 MPa }
    resistivity:
      - { age: 7 d, tested: 2026-03-17T09:40, verification: { known: 1000 ohm, read: 998 ohm }, mean: 41 ohm m, of: 3 }
    deviations: mixed twice
    note: by the night shift
shipments:
  - { bill: "007", date: 2026-03-21, mass: 24.8 t, to: Somebody, project: Bridge, purchase-order: PO-10, seal: S-1, vehicle: car 9 }
note: whole
`,
  'controls/K-9.yaml': `condition: warm
laboratory: quay
cement: { lot: "12", type: I, Na2O-equivalent: 0.6 %, strength: 45 MPa }
cast: 2026-03-10T09:00
strength:
  - { age: 7 d, tested: 2026-03-17T09:00, specimens: { a: 80 kN } }
`,
}

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

  it('gives every member of a lot that is not named as left out, and of a control batch', () => {
    const folder = mkdtempSync(join(tmpdir(), 'exported-'))
    cpSync('test/diagnostics/base', folder, { recursive: true })
    for (const [path, text] of Object.entries(MADE)) writeFileSync(join(folder, path), text)
    const { diagnostics, records: loaded } = loadRecords(folder)
    expect(diagnostics.map(({ message }) => message)).toEqual([])
    const made = {
      lots: new Map([...loaded.lots].filter(([id]) => id === 'tuff/T-9')),
      controls: new Map([...loaded.controls].filter(([id]) => id === 'K-9')),
    }
    const tables = exportTables(made)
    const plan = planned({ map: exportMap(tables, 'all.xlsx'), table: sheetsOf(made) })
    expect(plan.faults).toEqual([])
    for (const [path, text] of Object.entries(MADE))
      expect(withoutLeftOut(recordIn(plan, path))).toEqual((parseYaml(text) as { value: object }).value)
    const { 'lots/tuff/T-9.yaml': lot } = MADE
    const members = Object.keys((parseYaml(lot) as { value: object }).value)
    expect([...members, ...LEFT_OUT].sort()).toEqual(
      Object.keys((schemaNamed('lot.json') as { properties: object }).properties).sort(),
    )
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
