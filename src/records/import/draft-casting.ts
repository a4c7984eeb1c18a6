/** When the mortars of finished figures were cast, in the draft of a lot: the ages that are to come are due from then. */
import { ageIn } from '../../core/measure/age.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { isMapping, isSame, type RecordDraft } from './draft.ts'
import type { TellFault } from './import-fault.ts'
import { columnOf } from './import-map.ts'
import { fieldValue, momentOf } from './row-values.ts'
import type { ReadRow } from './table-rows.ts'

/** Where the ages of an index are planned. */
const PLANNED_IN: Readonly<Partial<Record<PropertyKey, 'strength' | 'resistivity'>>> = {
  'strength-activity-index': 'strength',
  'resistivity-index': 'resistivity',
}

interface PlannedFigure {
  readonly condition: string
  readonly measure: 'strength' | 'resistivity'
  readonly age: string
}

/**
 * A test for each condition that the table has indices at, with every age that it has a column for, whether or not this
 * row has a figure there.
 * @param sample undefined where the row names none: then it is not known what was cast
 */
export function addCasting(row: ReadRow, draft: RecordDraft, sample: string | undefined): void {
  const cast = momentOf(row, 'cast', 'cast-time')
  const laboratory = fieldValue(row, 'laboratory')?.written
  if (cast === undefined || sample === undefined || laboratory === undefined) return
  for (const [condition, planned] of Map.groupBy(plannedIn(row), (figure) => figure.condition)) {
    const index = draft.itemOf(
      ['tests'],
      (one) =>
        one['sample'] === sample &&
        one['condition'] === condition &&
        one['laboratory'] === laboratory &&
        isSame(one['cast'] ?? '', cast.written, { as: 'moment' }),
      () => ({ sample, condition, laboratory, cast: cast.written as Plain }),
      row.place,
    )
    draft.claim(['tests', index, 'cast'], cast.place)
    for (const { measure, age } of planned)
      draft.itemOf(
        ['tests', index, measure],
        (one) => isSame(one['age'] ?? '', age, { as: 'age' }),
        () => ({ age }),
        row.place,
      )
  }
}

/**
 * Says which ages of the tables that give a lot's indices are in none of its rows: without a casting nothing awaits them, and
 * a lot below its limit at the first age would stand as failing.
 * @param rows all of the lot
 * @param draft with all of them in it
 */
export function tellUnawaited(rows: readonly ReadRow[], draft: RecordDraft, tell: TellFault): void {
  const withIndex = rows.filter(({ values }) =>
    values.some(({ name }) => PLANNED_IN[name as PropertyKey] !== undefined),
  )
  const [first] = withIndex
  if (first === undefined || 0 < draft.items(['tests']).length) return
  const known = agesIn(draft)
  const blank = withIndex.flatMap(plannedIn).flatMap(({ age }) => (known.has(ageIn(age)?.hours) ? [] : [age]))
  if (blank.length === 0) return
  tell({
    code: 'import-row',
    severity: 'note',
    place: first.place,
    message: `the lot has no index at ${[...new Set(blank)].join(', ')} and no casting day, so that age is not awaited`,
    mend: 'give "cast" in a column, or write cast: in the tests of the lot, where later ages are still to come',
  })
}

/** Hours of the ages at which a lot has finished indices. */
function agesIn(draft: RecordDraft): ReadonlySet<number | undefined> {
  const figures = draft
    .items(['analyses'])
    .flatMap(({ results = {} }) =>
      Object.keys(PLANNED_IN).flatMap((index) => [isMapping(results) ? (results[index] ?? []) : []].flat()),
    )
  return new Set(
    figures.map((figure) => (isMapping(figure) ? ageIn(String(figure['age']))?.hours : undefined)),
  )
}

function plannedIn(row: ReadRow): PlannedFigure[] {
  const whole = { condition: fieldValue(row, 'condition')?.written, age: fieldValue(row, 'age')?.written }
  const figures = Object.values(row.table.columns).flatMap((written): PlannedFigure[] => {
    const { to, condition = whole.condition, age = whole.age } = columnOf(written)
    const measure = PLANNED_IN[to as PropertyKey]
    return measure === undefined || condition === undefined || age === undefined
      ? []
      : [{ condition, measure, age }]
  })
  return figures.toSorted((a, b) => (ageIn(a.age)?.hours ?? 0) - (ageIn(b.age)?.hours ?? 0))
}
