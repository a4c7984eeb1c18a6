/** How a lot is laid out on a bench sheet: which parts stand together, and what is asked for before it is written. */

/** Keys of one mapping that stand together under a heading. */
export interface SheetPart {
  readonly legend: string
  readonly keys: readonly string[]
}

/** A mapping of the record, by its place with `*` for a place in a list. */
interface Sheet {
  readonly parts?: readonly SheetPart[]
  /** Keys whose fields stand ready though nothing is written in them yet, beside those that must be written. */
  readonly ready?: readonly string[]
  /** What one of a list is called, and the key that tells it from the others. */
  readonly one?: string
  readonly told?: readonly string[]
}

/** Written by `npm run issue` alone. */
export const NOT_ASKED: readonly string[] = ['revisions']

export const SHEETS: Readonly<Record<string, Sheet>> = {
  '': {
    parts: [
      { legend: 'Lot', keys: ['number', 'class', 'produced', 'quantity', 'silo'] },
      { legend: 'Samples', keys: ['samples'] },
      { legend: 'Analyses', keys: ['analyses'] },
      { legend: 'Mortars', keys: ['tests'] },
      { legend: 'Shipments', keys: ['shipments'] },
      { legend: 'Agency’s results', keys: ['verification'] },
      { legend: 'Answers to findings', keys: ['answers'] },
    ],
    ready: ['silo', 'samples', 'analyses', 'tests', 'shipments'],
  },
  '/samples/*': { one: 'Sample', told: ['id', 'kind'], ready: ['on', 'taken', 'place', 'by'] },
  '/analyses/*': { one: 'Analysis', told: ['sample', 'laboratory'] },
  '/verification/*': { one: 'Agency’s result', told: ['sample', 'laboratory'] },
  '/tests/*': {
    one: 'Mortar',
    told: ['sample', 'condition'],
    parts: [
      { legend: 'Mixture', keys: ['sample', 'condition', 'control', 'laboratory'] },
      { legend: 'Casting', keys: ['cast', 'water', 'flow', 'mould'] },
      { legend: 'Specimens and readings', keys: ['strength', 'resistivity'] },
    ],
    ready: ['control', 'water', 'flow', 'strength', 'resistivity'],
  },
  '/tests/*/strength/*': { one: 'Strength', told: ['age'], ready: ['tested', 'specimens'] },
  '/tests/*/resistivity/*': {
    one: 'Resistivity',
    told: ['age'],
    ready: ['tested', 'temperature', 'specimens'],
  },
  '/shipments/*': { one: 'Shipment', told: ['bill', 'date'], ready: ['to', 'project'] },
  '/documents/*': { one: 'Document', told: ['title'] },
  '/blend/*': { one: 'Constituent', told: ['source'] },
  '/answers/*': { one: 'Answer', told: ['finding'] },
}

/** Specimens of one reading that stand ready where nothing says how many there are. */
export const USUAL_SPECIMENS = 3

/** What a field may be filled with from the records of the site: the key of a place and what it names. */
export const NAMES: Readonly<Record<string, 'sample' | 'laboratory' | 'condition' | 'control' | 'source'>> = {
  '/analyses/*/laboratory': 'laboratory',
  '/analyses/*/subcontracted': 'laboratory',
  '/analyses/*/sample': 'sample',
  '/tests/*/sample': 'sample',
  '/tests/*/condition': 'condition',
  '/tests/*/control': 'control',
  '/tests/*/laboratory': 'laboratory',
  '/verification/*/laboratory': 'laboratory',
  '/verification/*/sample': 'sample',
  '/samples/*/to': 'laboratory',
  '/samples/*/of': 'sample',
  '/blend/*/source': 'source',
}

/** The place of a path in `SHEETS` and `NAMES`. */
export function placeOf(path: readonly (string | number)[]): string {
  return path.map((part) => `/${typeof part === 'number' ? '*' : part}`).join('')
}
