/** A class that none of the specifications has which a lot is judged under: a misspelt one costs its lots their verdict. */
import { type Criterion, everyClause } from '../../core/criteria/criterion.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { listWords } from '../../words/sentences.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot, Source } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { withSignsNamed } from '../yaml/unseen-characters.ts'
import { fittingCriteria, listedCriteria } from './criteria-in-force.ts'
import type { AllRecords } from './references.ts'

type Stated = Pick<Lot, 'class' | 'class-under'>

/** A class may be one of any specification that the source or the site lists, whatever its dates. */
export function checkSourceClass(source: Source, all: AllRecords, report: FileReport): void {
  const sets = source.criteria?.map(({ set }) => set) ?? all.site.criteria
  checkGeneral({ sets, source, stated: source, under: source['class-under'] ?? {} }, all, report)
  checkUnder(source, all, report)
}

/** A class may be one of any specification that is in force for the lot, or that the lot invokes. */
export function checkLotClass(id: string, lot: Lot, all: AllRecords, report: FileReport): void {
  const source = all.sources.get(sourceOf(id))
  if (source !== undefined) {
    const invoked = lot.criteria?.map(({ set }) => set) ?? []
    const sets = [...listedCriteria(all, source, lot.produced.to), ...invoked]
    const under = { ...source['class-under'], ...lot['class-under'] }
    checkGeneral({ sets, source, stated: lot, under }, all, report)
  }
  checkUnder(lot, all, report)
}

interface General {
  /** Ids of the specifications that may judge. */
  readonly sets: readonly string[]
  readonly source: Source
  readonly stated: Stated
  readonly under: NonNullable<Stated['class-under']>
}

/** Nothing is said where no specification asks for the class, nor where one with a fault may have it. */
function checkGeneral({ sets, source, stated, under }: General, all: AllRecords, report: FileReport): void {
  const { class: claimed } = stated
  const judging = [...sets, ...ofProjects(all)]
  if (claimed === undefined || judging.some((set) => !all.criteria.has(set))) return
  const fitting = fittingCriteria(all, source, judging)
  const asked = fitting.find(
    ({ classes, classFrom, layers }) =>
      0 < classes.length && classFrom === undefined && !layers.some(({ id }) => Object.hasOwn(under, id)),
  )
  const known = new Set(fitting.flatMap((set) => namesIn(set, all)))
  if (asked === undefined || known.has(claimed)) return
  report.at(
    '/class',
    'class-unknown',
    `no specification that judges this has a class "${withSignsNamed(claimed)}"; ${asked.id} has ${listWords(asked.classes, 'and')}`,
    nearNames(claimed, known) || `write one of ${listWords(asked.classes, 'or')}`,
  )
}

/** A shipment may bring its project's specifications to any lot. */
function ofProjects({ site }: AllRecords): string[] {
  return (site.projects ?? []).flatMap(({ criteria }) => criteria.map(({ set }) => set))
}

/** Classes of a specification, of those below it, and of others that it allows. */
function namesIn({ layers, clauses }: Criterion, { criteria }: AllRecords): string[] {
  const allowed = [...everyClause(clauses)].flatMap((clause) =>
    clause.form === 'class' ? [...clause.allowed, ...clause.acceptedAs.map((entry) => entry.class)] : [],
  )
  return [...layers.flatMap(({ id }) => criteria.get(id)?.classes ?? []), ...allowed]
}

/** A class claimed under one specification is one of it, or of one that rests on it. */
function checkUnder(stated: Stated, all: AllRecords, report: FileReport): void {
  const { criteria } = all
  for (const [set, claimed] of Object.entries(stated['class-under'] ?? {})) {
    const above = [...criteria.values()].filter(({ layers }) => layers.some(({ id }) => id === set))
    const known = new Set(above.flatMap((each) => namesIn(each, all)))
    if (!criteria.has(set) || known.has(claimed)) continue
    report.at(
      below('/class-under', set),
      'class-unknown',
      known.size === 0
        ? `the specification ${set} has no classes`
        : `the specification ${set} has no class "${withSignsNamed(claimed)}"; it has ${listWords([...known], 'and')}`,
      known.size === 0
        ? 'take the line out'
        : nearNames(claimed, known) || `write one of ${listWords([...known], 'or')}`,
    )
  }
}
