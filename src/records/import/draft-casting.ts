/** When the mortars of finished figures were cast, in the draft of a lot: the ages that are to come are due from then. */
import { ageIn } from '../../core/measure/age.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { isSame, type RecordDraft } from './draft.ts'
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
export function addCasting(
  row: ReadRow,
  { draft, sample }: { readonly draft: RecordDraft; readonly sample: string | undefined },
  tell: TellFault,
): void {
  const cast = momentOf(row, 'cast', 'cast-time')
  const laboratory = fieldValue(row, 'laboratory')?.written
  if (cast === undefined) tellUnawaited(row, draft, tell)
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

/** Without a casting nothing awaits the ages that are still blank: a lot below its limit at the first one would stand as failing. */
function tellUnawaited(row: ReadRow, draft: RecordDraft, tell: TellFault): void {
  const planned = plannedIn(row)
  const given = row.values.flatMap(({ name, scope }) =>
    PLANNED_IN[name as PropertyKey] === undefined ? [] : [scope.age ?? fieldValue(row, 'age')?.written],
  )
  const blank = [...new Set(planned.map(({ age }) => age))].filter((age) => !given.includes(age))
  if (given.length === 0 || blank.length === 0 || 0 < draft.items(['tests']).length) return
  tell({
    code: 'import-row',
    severity: 'note',
    place: row.place,
    message: `the row has no index at ${blank.join(', ')} and no casting day, so that age is not awaited`,
    mend: 'give "cast" in a column, or write cast: in the tests of the lot, where later ages are still to come',
  })
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
