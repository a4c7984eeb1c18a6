/** new control, source, laboratory, producer, criterion, study: one record each, with what it rests on. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { Criterion } from '../core/criteria/criterion.ts'
import { asksForClass } from '../core/judging/scope.ts'
import type { MaterialKind } from '../core/measure/material-kind.ts'
import type { Moment } from '../core/measure/moment.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import type { Records } from '../records/records.ts'
import { askedFigures } from '../scaffold/asked-figures.ts'
import { controlSheet } from '../scaffold/control-sheet.ts'
import type { NewFile } from '../scaffold/new-file.ts'
import { laboratoryRecord, producerRecord, type Standing, sourceRecord } from '../scaffold/party-records.ts'
import { idFault, idFor, type NewKind } from '../scaffold/record-id.ts'
import { STUDY_KINDS, type StudyKind, studySheet } from '../scaffold/study-sheet.ts'
import { supplementSheet } from '../scaffold/supplement-sheet.ts'
import { MATERIAL_KINDS } from '../words/material-kinds.ts'
import { listWords } from '../words/sentences.ts'
import { idFailure, knownRecord, namesOnDisk } from './lay-out-lot.ts'
import { CommandFailure, EXIT } from './program.ts'
import { shippedCondition, shippedRecords, shippedWith } from './shipped.ts'

/** @throws CommandFailure (wrong use) for an id that no record can have */
export function checkId(kind: NewKind, id: string): string {
  const wrong = idFault(kind, id)
  if (wrong === undefined) return id
  throw idFailure(wrong)
}

/** An id that is given, else one made of a name. */
function idOf(kind: NewKind, given: string | undefined, name: string | undefined): string {
  return checkId(kind, given ?? idFor(name ?? '', kind))
}

export interface ControlOptions {
  readonly condition?: string
  readonly id?: string
}

/** @param laboratory that casts the batch */
export function layOutControl(records: Records, laboratory: string, options: ControlOptions): NewFile[] {
  knownRecord(records.laboratories, 'laboratory', laboratory)
  const own = [...records.conditions.keys()]
  const id = options.condition ?? own[0] ?? ''
  const shipped = missing(records, shippedCondition(id))
  const all = new Map([...shippedRecords().conditions, ...records.conditions])
  const condition = knownRecord(all, 'condition', id)
  const control = checkId('control', options.id ?? nextControl(records, id))
  return [
    ...shipped,
    controlSheet({ id: control, condition: [id, condition], laboratory, units: records.site.units }),
  ]
}

/** "c311-001", and one more for each batch whose id goes on from there. */
function nextControl({ contentDir }: Records, condition: string): string {
  const runs = namesOnDisk(contentDir, 'controls').flatMap((id) =>
    id.startsWith(`${condition}-`) ? Number(/-(\d{1,6})$/.exec(id)?.[1] ?? 0) : [],
  )
  return `${condition}-${String(Math.max(0, ...runs) + 1).padStart(3, '0')}`
}

export interface PartyOptions {
  readonly name?: string
  readonly signatory?: string
  readonly function?: string
}

export function layOutProducer(id: string | undefined, options: PartyOptions): NewFile[] {
  const { name = '<your company>', signatory = '<your name>', function: office = '<your function>' } = options
  return [
    producerRecord({
      id: idOf('producer', id, options.name),
      name,
      address: ['<your street and number>', '<your town>'],
      signatory: { name: signatory, function: office },
    }),
  ]
}

export interface LaboratoryOptions {
  readonly name?: string
  readonly standing?: Standing
}

export function layOutLaboratory(
  records: Records,
  id: string | undefined,
  options: LaboratoryOptions,
): NewFile[] {
  const { name = '<your laboratory>' } = options
  const [source] = records.sources.values()
  const governing = records.criteria.get(records.site.criteria[0] ?? '')
  const asked =
    source === undefined || governing === undefined
      ? []
      : askedFigures(governing, { kind: source.kind, class: source.class ?? null })
  const address = ['<your street and number>', '<your town>']
  const laboratory = { id: idOf('laboratory', id, options.name), name, address }
  return [laboratoryRecord({ ...laboratory, standing: options.standing ?? 'in-house', asked })]
}

export interface SourceOptions {
  readonly name?: string
  readonly producer?: string
  readonly material?: string
  readonly class?: string
  readonly governing?: string
  readonly pattern?: string
}

export function layOutSource(records: Records, given: string | undefined, options: SourceOptions): NewFile[] {
  const id = idOf('source', given, options.name)
  const producer = options.producer ?? [...records.producers.keys()][0] ?? ''
  knownRecord(records.producers, 'producer', producer)
  const kind = materialOf(options.material ?? [...records.sources.values()][0]?.kind ?? 'coal-fly-ash')
  const { governing, files } = setNamed(records, options.governing ?? records.site.criteria[0] ?? '')
  const record = sourceRecord({
    ...{ id, name: options.name ?? '<your source>', producer, kind, governing },
    class: claimedIn(records, kind, governing, options.class),
    lotNumberPattern: options.pattern ?? `${id.slice(0, 2).toUpperCase()}-YYYY-###`,
    isOwnSet: governing.id !== records.site.criteria[0],
    units: records.site.units,
  })
  return [...missing(records, files), record]
}

function materialOf(text: string): MaterialKind {
  const kind = MATERIAL_KINDS.find((known) => known === text)
  if (kind !== undefined) return kind
  throw new CommandFailure(
    `There is no kind of material "${text}".`,
    EXIT.wrongUse,
    nearNames(text, MATERIAL_KINDS) || `write one of ${MATERIAL_KINDS.join(', ')}`,
  )
}

/** As given, else what the other sources of the kind claim, where that is one class of the set. */
function claimedIn(
  { sources }: Records,
  kind: MaterialKind,
  governing: Criterion,
  given: string | undefined,
): string | null {
  const others = [...sources.values()].filter((source) => source.kind === kind)
  const claimed = new Set(others.flatMap(({ class: own }) => own ?? []))
  const [only] = claimed.size === 1 ? claimed : []
  const own = classOf(given, governing)
  if (own !== null || !asksForClass(governing)) return own
  if (only !== undefined && governing.classes.includes(only)) return only
  throw new CommandFailure(
    `Limits of ${governing.id} depend on the class, and none is given.`,
    EXIT.wrongUse,
    `add --class with one of ${listWords(governing.classes, 'or')}`,
  )
}

function classOf(given: string | undefined, { id, classes }: Criterion): string | null {
  if (given === undefined) return null
  if (classes.includes(given)) return given
  throw new CommandFailure(
    `The specification ${id} has no class "${given}".`,
    EXIT.wrongUse,
    classes.length === 0 ? 'leave --class out' : `write one of ${classes.join(', ')}`,
  )
}

/** A set on record, else one that is shipped, which then comes along with all that it names. */
function setNamed(
  records: Records,
  id: string,
): { readonly governing: Criterion; readonly files: readonly NewFile[] } {
  const own = records.criteria.get(id)
  if (own !== undefined) return { governing: own, files: [] }
  const all = new Map([...shippedRecords().criteria, ...records.criteria])
  return { governing: knownRecord(all, 'criterion', id), files: shippedWith(id) }
}

/** What is there already stays as it is, whether it can be read or not. */
function missing({ contentDir }: Records, files: readonly NewFile[]): NewFile[] {
  return files.filter(({ path }) => !existsSync(join(contentDir, path)))
}

/** @param base SET or SET/CLASS */
export function layOutCriterion(records: Records, given: string, base: string): NewFile[] {
  const id = checkId('criterion', given)
  const [set = '', ...rest] = base.split('/')
  const { governing, files } = setNamed(records, set)
  const classes = rest.length === 0 ? [] : [classOf(rest.join('/'), governing) ?? '']
  const conditions = new Map([...shippedRecords().conditions, ...records.conditions])
  const sheet = supplementSheet({
    ...{ id, base: governing, classes },
    conditionTitle: (condition) => conditions.get(condition)?.title ?? condition,
  })
  return [...missing(records, files), sheet]
}

export function layOutStudy(kind: string, given: string | undefined, today: Moment): NewFile[] {
  const known = STUDY_KINDS.find((one) => one === kind)
  if (known === undefined)
    throw new CommandFailure(
      `There is no kind of study "${kind}".`,
      EXIT.wrongUse,
      nearNames(kind, STUDY_KINDS) || `write one of ${STUDY_KINDS.join(', ')}`,
    )
  return [studySheet({ id: checkId('study', given ?? USUAL_STUDY[known]), kind: known, fixed: today })]
}

const USUAL_STUDY: Readonly<Record<StudyKind, string>> = {
  screening: 'S-1',
  interlaboratory: 'R-1',
  ruggedness: 'G-1',
}
