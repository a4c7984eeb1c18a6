/** The audit checks that were run on an edition: what each asks, how often it looked and what it found. */
import { CHECKS, type CheckFamily, type CheckId } from '../../core/checks/catalogue.ts'
import { type CheckLooks, checksRun } from '../../core/checks/checked.ts'
import { checkStatement, familyWords } from '../../words/check-statements.ts'
import { checksRunWords } from '../../words/checks-run.ts'
import { countWords, shortNumber } from '../../words/numbers.ts'
import type { Edition } from '../shape/edition.ts'
import { partOfSource } from '../shape/part-of-source.ts'

export interface CheckRow {
  readonly check: CheckId
  readonly statement: string
  /** As run. */
  readonly severity: string
  /** The severity by default, where the site has another. */
  readonly insteadOf: string | null
  readonly looked: string
  readonly found: string
  /** Flags that chance alone is expected to raise; null of a check that chance does not raise. */
  readonly expected: string | null
}

export interface ChecksRunView {
  readonly summary: string
  readonly families: readonly {
    readonly heading: string
    /** "9 checks, 3 flags" */
    readonly counts: string
    readonly rows: readonly CheckRow[]
  }[]
  /** Checks that had nothing to look at. */
  readonly idle: readonly { readonly check: CheckId; readonly statement: string }[]
}

/** All checks of all sources and laboratories together. */
export function checksRunView(edition: Edition): ChecksRunView {
  const looks = [
    ...[...edition.sources.keys()].flatMap((id) => looksAt(edition, id)),
    ...[...edition.laboratories.keys()].flatMap((id) => edition.laboratoryChecks(id).looks),
  ]
  const run = checksRun(looks, edition.lots.size)
  const byFamily = Map.groupBy(run.looks, ({ check }) => CHECKS[check].family)
  const ran = new Set(run.looks.map(({ check }) => check))
  return {
    summary: checksRunWords(run),
    families: [...byFamily].map(([family, own]) => familyRows(edition, family, own)),
    idle: checkIds()
      .filter((check) => !ran.has(check))
      .map((check) => ({ check, statement: checkStatement(check) })),
  }
}

const looksAt = partOfSource('looks', (edition: Edition, id) => edition.source(id).checks.looks)

function checkIds(): CheckId[] {
  return Object.keys(CHECKS) as CheckId[]
}

function familyRows(
  edition: Edition,
  family: CheckFamily,
  looks: readonly CheckLooks[],
): ChecksRunView['families'][number] {
  const flags = looks.reduce((total, { found }) => total + found, 0)
  return {
    heading: familyWords(family),
    counts: `${countWords(looks.length, 'check')}, ${countWords(flags, 'flag')}`,
    rows: looks.map((one) => rowOf(edition, one)),
  }
}

function rowOf({ site }: Edition, { check, looked, found, expected }: CheckLooks): CheckRow {
  const { severity } = CHECKS[check]
  const wanted = site.checks?.[check]
  return {
    check,
    statement: checkStatement(check),
    severity: wanted ?? severity,
    insteadOf: wanted === undefined || wanted === severity ? null : severity,
    looked: String(looked),
    found: String(found),
    expected: expected === null ? null : shortNumber(expected, 1),
  }
}
