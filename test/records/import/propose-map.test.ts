import { describe, expect, it } from 'vitest'
import { readCsv } from '../../../src/records/import/csv.ts'
import type { Sheet } from '../../../src/records/import/grid.ts'
import { linesToDecide, proposedText } from '../../../src/records/import/proposed-text.ts'
import { proposeTables } from '../../../src/records/import/propose-map.ts'
import { mapFaults, texts } from './imported.ts'

const NOTHING = {
  file: 'bench.csv',
  source: null,
  laboratory: null,
  condition: null,
  encoding: null,
} as const

function proposal(
  table: string,
  known: Partial<Record<'source' | 'laboratory' | 'condition', string>> = {},
): string {
  return proposedText(proposeTables([readCsv(Buffer.from(table)).sheet]), { ...NOTHING, ...known })
}

function row(number: number, texts: Readonly<Record<number, string>>): Sheet['rows'][number] {
  return {
    row: number,
    cells: new Map(Object.entries(texts).map(([column, text]) => [Number(column), { kind: 'text', text }])),
  }
}

function lines(table: string): string[] {
  return proposal(table)
    .split('\n')
    .slice(proposal(table).split('\n').indexOf('    columns:') + 1)
    .map((line) => line.trim())
    .filter((line) => line !== '')
}

describe('proposeTables', () => {
  it('places what laboratories call things, with units and ages from the headings', () => {
    expect(
      lines(
        'Lot no.,Date tested,SiO₂ (wt.%),LOI %,"+325, %","% retained 45 µm",SAI 7d (%),Blaine (cm²/g),Fe2O3 (%)\nW-1,2026-03-11,50,2,17,17,84,3800,6\n',
      ),
    ).toEqual([
      'Lot no.: lot   # sure',
      'Date tested: tested   # sure',
      'SiO2 (wt.%): { to: SiO2, unit: "%" }   # sure',
      'LOI %: { to: loss-on-ignition, unit: "%" }   # sure',
      '"+325, %": { to: residue-45um, unit: "%" }   # sure',
      '"% retained 45 μm": { to: residue-45um, unit: "%" }   # sure',
      'SAI 7d (%): { to: strength-activity-index, unit: "%", age: 7 d }   # sure',
      'Blaine (cm2/g): { to: specific-surface, unit: cm2/g }   # sure',
      'Fe2O3 (%): { to: Fe2O3, unit: "%" }   # sure',
    ])
  })
  it('asks where a name means two things, naming both, and where nobody states the unit', () => {
    const [, fineness, gravity, tons, colour] = lines(
      'Lot,Fineness,S.G.,Tons,Colour index\nW-1,17,2.4,900,5\n',
    )
    expect(fineness).toMatch(/^Fineness: undecided {3}# to decide: .*residue-45um or specific-surface$/)
    expect(gravity).toMatch(/^S\.G\.: undecided {3}# to decide: specific gravity is a ratio .*: density$/)
    expect(tons).toBe(
      'Tons: { to: quantity, unit: undecided }   # to decide: the heading states no unit: t, short ton, long ton, kg, lb',
    )
    expect(colour).toBe('Colour index: undecided   # to decide: not known: write what it gives, or ignore')
  })
  it('refuses its own map until what is undecided is decided', () => {
    const text = proposal('Lot,Tested,Fineness (%)\nW-1,2026-03-11,17\n', {
      source: 'works',
      laboratory: 'bench',
    })
    expect(mapFaults(text)).toEqual([
      expect.stringContaining('it is not decided what the column "Fineness (%)" gives'),
    ])
  })
  it('proposes a map that reads the file where all is sure', () => {
    const table = 'Report of March\n\nLot;Tested;LOI (%);SO3 (%)\nW-1;31.03.2026;2,10;0,5\n'
    const text = proposal(table, { source: 'works', laboratory: 'bench' })
    expect(text).toContain('    dates: day-month-year   # sure: a number beyond 12 shows it\n')
    expect(text).toContain('    numbers: { decimal: comma }   # guessed: it might separate thousands\n')
    expect(texts({ map: text, table })['lots/works/W-1.yaml']).toContain(
      'tested: 2026-03-31, results: { SO3: 0.5 %, loss-on-ignition: 2.10 % }',
    )
  })
  it('takes a heading under another by the lower one, its unit and its age from either', () => {
    const sheet: Sheet = {
      name: 'Results',
      merged: [
        { rows: [1, 1], columns: [1, 2] },
        { rows: [1, 1], columns: [3, 6] },
        { rows: [1, 1], columns: [7, 10] },
      ],
      rows: [
        row(1, { 1: 'Production', 3: 'Chemistry, % by mass (dry)', 7: 'Strength activity index, ASTM C311' }),
        row(2, {
          0: 'Lot',
          ...{
            1: 'To',
            2: 'Qty (t)',
            3: 'SiO2',
            4: 'Na2Oeq',
            5: 'Sum S+A+F',
            6: 'Water req. (% of control)',
          },
          ...{ 7: 'Cast', 8: '28 d date', 9: '7 d (%)', 10: '28 d' },
        }),
        row(3, { 0: 'W-1', 2: '900', 3: '51.2' }),
      ],
    }
    const text = proposedText(proposeTables([sheet]), NOTHING)
    expect(
      text
        .slice(text.indexOf('    columns:'))
        .trim()
        .split('\n')
        .slice(1)
        .map((line) => line.trim()),
    ).toEqual([
      'Lot: lot   # sure',
      'Production / To: produced-to   # sure',
      'Production / Qty (t): { to: quantity, unit: t }   # sure',
      '"Chemistry, % by mass (dry) / SiO2": { to: SiO2, unit: "%" }   # sure',
      '"Chemistry, % by mass (dry) / Na2Oeq": ignore   # guessed: alkali-equivalent is computed from the other results',
      '"Chemistry, % by mass (dry) / Sum S+A+F": ignore   # guessed: oxide-sum is computed from the other results',
      '"Chemistry, % by mass (dry) / Water req. (% of control)": { to: water-requirement, unit: "%" }   # sure',
      '"Strength activity index, ASTM C311 / Cast": cast   # sure',
      '"Strength activity index, ASTM C311 / 28 d date": { to: tested, age: 28 d }   # sure',
      '"Strength activity index, ASTM C311 / 7 d (%)": { to: strength-activity-index, unit: "%", age: 7 d }   # sure',
      expect.stringMatching(
        /^"Strength activity index, ASTM C311 \/ 28 d": \{ to: strength-activity-index, unit: "%", age: 28 d \} {3}# guessed: the heading states no unit/,
      ),
    ])
    // Columns, the kind of the table and what holds for all rows alike.
    expect(text).toContain('proposed from its headings: 8 sure, 6 guessed, 3 to decide.')
    expect(linesToDecide(text)).toBe(3)
  })
  it('says what is needed and stands in no column', () => {
    expect(proposal('Lot,Load (kN)\nW-1,60\n')).toContain(`    every:
      source: undecided   # to decide: id of the source
      sample: C   # guessed: one composite sample a lot
      condition: undecided   # to decide: id of the condition
      control: undecided   # to decide: id of the control batch
      laboratory: undecided   # to decide: id of the laboratory
      cast: undecided   # to decide: when the mortar was cast, such as 2026-03-11T09:20
      tested: undecided   # to decide: day of the test; for readings by age, cast + age counts it from casting
      age: undecided   # to decide: age of the readings, such as 28 d
`)
  })
  it('gives the sample of a lot that the row makes its kind, and knows a bill of lading by its sign', () => {
    expect(
      proposal(
        'Lot,Produced from,Produced to,Tons (t),Tested,LOI (%)\nW-1,2026-03-02,2026-03-08,900,2026-03-11,2.1\n',
      ),
    ).toContain('      sample-kind: composite   # guessed: one composite sample a lot\n')
    expect(proposal('B/L,Lot,Date,Net (t)\n007,W-1,2026-03-21,24.8\n')).toContain(
      '      B/L: bill   # sure\n',
    )
  })
  it('takes a heading that is not known for no result', () => {
    expect(
      proposal('Lot,Produced from,Produced to,Tons (t),Colour\nW-1,2026-03-02,2026-03-08,900,grey\n'),
    ).toContain('  - holds: lots ')
  })
  it('takes the average of several samples for no result, and says where the samples go', () => {
    const [, average, least, strength] = lines(
      'Lot,Average LOI (%),Moisture min. (%),Mean strength (MPa)\nW-1,2.1,0.1,33\n',
    )
    expect(average).toBe(
      'Average LOI (%): undecided   # to decide: computed from the regular samples themselves where a table gives those: then ignore; else loss-on-ignition',
    )
    expect(least).toMatch(/undecided .* else moisture$/)
    expect(strength).not.toMatch(/regular samples/)
  })
  it('knows the purchase order of a lot and of a shipment, and the strength of a control beside readings', () => {
    expect(lines('Lot,Produced,Tons (t),PO no.\nW-1,2026-03-02,900,4711\n')).toContain(
      'PO no.: purchase-order   # sure',
    )
    expect(lines('B/L,Lot,Date,Net (t),Purchase order\n007,W-1,2026-03-21,24.8,4711\n')).toContain(
      'Purchase order: purchase-order   # sure',
    )
    expect(lines('Lot,Cube,7 d load (kN),7 d control strength (MPa)\nW-1,1,60,30\n')).toContain(
      '7 d control strength (MPa): { to: control-strength, unit: MPa, age: 7 d }   # sure',
    )
  })
  it('finds no table where no heading is known', () => {
    expect(proposeTables([readCsv(Buffer.from('a,b\n1,2\n')).sheet])).toEqual([])
  })
})
