/** A study against itself: what its kind needs, codes that its parts name, and designs that can answer what is asked. */
import { designFaults, type DesignFault, levelsOf } from '../../core/studies/ruggedness/design.ts'
import { CONTROL, type StudyReading } from '../../core/studies/study-reading.ts'
import { checkDate } from '../checks/dates.ts'
import { checkReference, type AllRecords } from '../checks/references.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { checkProgramme } from './check-programme.ts'
import { writtenConditions } from './crossed-conditions.ts'

export function checkStudy(study: Study, all: AllRecords, report: FileReport): void {
  checkParts(study, report)
  checkReadings(study, report)
  checkDate(study.plan.fixed, '/plan/fixed', report)
  for (const [place, { date }] of (study.departures ?? []).entries())
    checkDate(date, `/departures/${place}/date`, report)
  for (const [name, code] of Object.entries(study.table?.materials ?? {}))
    checkCode(
      code,
      { ...study.materials, [CONTROL]: {} },
      { pointer: below('/table/materials', name), what: 'material' },
      report,
    )
  if (CONTROL in study.materials)
    report.atKey(
      `/materials/${CONTROL}`,
      'schema',
      '"control" names the control mortar, so no material can have it as its code',
      'give the material another code',
    )
  for (const [code, condition] of Object.entries(writtenConditions(study))) {
    checkReference('condition', condition.record, `/conditions/${code}/record`, all, report)
    checkCode(
      condition.cement,
      study.cements,
      { pointer: `/conditions/${code}/cement`, what: 'cement' },
      report,
    )
  }
  checkCode(
    study.usual?.condition,
    study.conditions,
    { pointer: '/usual/condition', what: 'condition' },
    report,
  )
  if (study.kind === 'ruggedness') checkDesign(study, report)
  checkProgramme(study, all, report)
}

/** What a kind of study must have, and what belongs to another kind. */
function checkParts(study: Study, report: FileReport): void {
  const needed: readonly (keyof Study)[] = study.kind === 'ruggedness' ? ['factors', 'runs'] : ['conditions']
  for (const key of needed)
    if (study[key] === undefined)
      report.atKey('', 'key-missing', `a study of the kind ${study.kind} needs ${key}`, `add ${key}`)
  const foreign: readonly (keyof Study)[] =
    study.kind === 'ruggedness'
      ? ['conditions', 'usual']
      : study.kind === 'screening'
        ? ['factors', 'runs']
        : ['factors', 'runs', 'usual']
  for (const key of foreign)
    if (study[key] !== undefined)
      report.atKey(
        `/${key}`,
        'key-unknown',
        `${key} has no place in a study of the kind ${study.kind}`,
        'remove it, or change the kind',
      )
  if (study.kind !== 'screening') return
  for (const [code, material] of Object.entries(study.materials))
    if (material.class === undefined)
      report.atKey(
        `/materials/${code}`,
        'key-missing',
        `the material ${code} is in no class, and a screening study compares classes`,
        'add class: inert, weak or reactive, and what says so under shown-by',
      )
  if (Object.keys(study.plan.threshold ?? {}).length === 0)
    report.atKey(
      '/plan',
      'key-missing',
      'the plan does not say what thresholds are rounded to',
      'add threshold, with a step for each route: { strength-activity-index: 5 % }',
    )
}

function checkReadings(study: Study, report: FileReport): void {
  if (study.readings !== undefined && study.table !== undefined)
    report.atKey(
      '/table',
      'reading-twice',
      'the study has readings of its own and a table',
      'keep one of the two',
    )
}

/**
 * Loads and resistances without the shape of what was pressed or read between plates.
 * @param readings of the study, from wherever they came
 */
export function checkShape(study: Study, readings: readonly StudyReading[], report: FileReport): void {
  const shaped = readings.find(({ measure }) => measure === 'load' || measure === 'resistance')
  if (shaped === undefined || study.specimens !== undefined) return
  report.atKey(
    '',
    'key-missing',
    `the readings hold a ${shaped.measure}, which needs the shape of the specimens`,
    'add specimens: { cube: 50 mm }',
  )
}

/**
 * Batches whose specimens would count twice: a load beside the strength that follows from it, or an index beside
 * the readings that it was computed from.
 * @param readings of the study, from wherever they came
 */
export function checkMeasures(study: Study, readings: readonly StudyReading[], report: FileReport): void {
  const batches = Map.groupBy(readings, ({ material, condition, laboratory, batch, age, measure }) =>
    JSON.stringify([material, condition, laboratory, batch, age.hours, ROUTE_OF[measure]]),
  )
  for (const own of batches.values()) {
    const [first, second] = [...new Set(own.map(({ measure }) => measure))]
    if (own[0] === undefined || second === undefined) continue
    const { material, condition, laboratory, batch, age } = own[0]
    report.atKey(
      study.table === undefined ? '/readings' : '/table',
      'reading-twice',
      `batch ${batch} of ${material} (${condition}, laboratory ${laboratory}, ${age}) states both a ${first} and a ${second}, of which one follows from the other`,
      `keep one of the two measures`,
    )
    return
  }
}

const ROUTE_OF: Readonly<Record<StudyReading['measure'], 'strength' | 'resistivity'>> = {
  load: 'strength',
  strength: 'strength',
  'strength-activity-index': 'strength',
  resistance: 'resistivity',
  resistivity: 'resistivity',
  'resistivity-index': 'resistivity',
}

function checkCode(
  code: string | undefined,
  listed: Readonly<Record<string, unknown>> | undefined,
  { pointer, what }: { readonly pointer: string; readonly what: string },
  report: FileReport,
): void {
  const codes = Object.keys(listed ?? {})
  if (code === undefined || codes.includes(code)) return
  report.at(
    pointer,
    'reference-unknown',
    `the study lists no ${what} "${code}"`,
    nearNames(code, codes) || 'list it in the study',
  )
}

/** A factor has two levels, a dummy column none. */
function checkLevels(factors: NonNullable<Study['factors']>, report: FileReport): void {
  for (const [place, { title, dummy = false, ...levels }] of factors.entries())
    for (const key of ['low', 'high'] as const)
      if (dummy === (levels[key] !== undefined))
        report.atKey(
          dummy ? `/factors/${place}/${key}` : `/factors/${place}`,
          dummy ? 'key-unknown' : 'key-missing',
          dummy
            ? `"${title}" is a dummy column and has a level`
            : `the factor "${title}" has no ${key} level`,
          dummy ? 'remove the level, or dummy' : `add ${key}, or dummy: true for a column without a factor`,
        )
}

function checkDesign({ factors = [], runs = {} }: Study, report: FileReport): void {
  checkLevels(factors, report)
  const entries = Object.entries(runs)
  const uneven = entries.filter(([, signs]) => signs.length !== factors.length)
  for (const [code, signs] of uneven)
    report.at(
      `/runs/${code}`,
      'schema',
      `the run ${code} has ${signs.length} signs, and the study has ${factors.length} factors`,
      'write a sign for each factor, in their order',
    )
  for (const [place, { low, high }] of factors.entries())
    if (low !== undefined && low === high)
      report.at(
        `/factors/${place}/high`,
        'schema',
        `the factor has ${low} as its low and as its high level`,
        'write two levels that differ, or mark the column as a dummy',
      )
  if (0 < uneven.length || entries.length === 0) return
  const design = entries.map(([, signs]) => ({
    levels: levelsOf(signs),
  }))
  const faults = designFaults(design)
  const [first, second] = firstAlike(entries)
  // A run copied over another spoils the balance of most columns: it is told, and not all of these.
  if (second !== undefined && MANY < faults.length)
    report.at(
      `/runs/${second}`,
      'schema',
      `the run ${second} has the signs of the run ${first}, which leaves the design unbalanced`,
      'correct the signs of one of the two',
    )
  else for (const fault of faults) report.atKey('/runs', 'schema', ...designWords(fault, factors))
}

/** Faults of a design that have one cause, as a rule. */
const MANY = 3

/** The first two runs of the same signs. */
function firstAlike(runs: readonly (readonly [string, string])[]): readonly string[] {
  const bySigns = Map.groupBy(runs, ([, signs]) => signs)
  const alike = [...bySigns.values()].find((own) => 1 < own.length) ?? []
  return alike.map(([code]) => code)
}

function designWords(fault: DesignFault, factors: NonNullable<Study['factors']>): [string, string] {
  const name = (place: number) => `"${factors[place]?.title}"`
  switch (fault.code) {
    case 'unbalanced':
      return [
        `${name(fault.factor)} is high in ${fault.high} runs and low in ${fault.low}, so its effect cannot be read off the runs`,
        'use a design in which each factor is high in half of the runs',
      ]
    case 'not-orthogonal':
      return [
        `${name(fault.factors[0])} and ${name(fault.factors[1])} change together, so the design cannot tell their effects apart`,
        'use a design whose columns are orthogonal, such as that of Plackett and Burman',
      ]
    case 'no-runs':
    case 'unequal-levels':
      return ['the runs do not state the levels of the factors', 'write a sign for each factor in every run']
  }
}
