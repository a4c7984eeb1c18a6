/** Audit checks through the front door: records as a user writes them go in, the findings of `check --json` come out. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { expect } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import { checkReport } from '../../src/edition/writers/check-report.ts'
import { loadRecords } from '../../src/records/load.ts'
import { lotText, SHARED, type TrialLot } from './front-door.ts'

/** What stands beside the shared records; the source is tuff, its lots are L1, L2, ... unless they are named. */
export interface Audited {
  readonly lots: Readonly<Record<string, TrialLot>>
  /** Further lines of the source. */
  readonly source?: string
  /** Further lines of site.yaml. */
  readonly site?: string
  /** Further lines of the laboratory quay. */
  readonly quay?: string
  /** Files of their own, by path. */
  readonly files?: Readonly<Record<string, string>>
  /** Members of the only clause; moisture of every lot is 2.0 %. */
  readonly clause?: string
  readonly asOf?: string
  /** Codes of the faults that the records have; none without it. */
  readonly faults?: readonly string[]
}

export interface ReportedFinding {
  readonly id: string
  readonly check: string
  readonly severity: string
  readonly about: string
  readonly sentence: string
  readonly evidence: readonly string[]
}

/** Every finding, those of the source first. */
export function auditOf(audited: Audited): readonly ReportedFinding[] {
  const report = reportOf(audited)
  return [...report.sources, ...report.lots].flatMap(({ findings }) => findings)
}

/** Sentences of one check. */
export function sentencesOf(check: string, audited: Audited): string[] {
  return auditOf(audited)
    .filter((finding) => finding.check === check)
    .map(({ sentence }) => sentence)
}

interface Report {
  readonly diagnostics: readonly { readonly code: string }[]
  readonly lots: readonly { readonly findings: readonly ReportedFinding[] }[]
  readonly sources: readonly {
    readonly findings: readonly ReportedFinding[]
    readonly checks: {
      readonly run: number
      readonly lots: number
      readonly expectedByChance: { readonly low: number; readonly expected: number; readonly high: number }
      readonly looks: readonly { readonly check: string; readonly looked: number; readonly found: number }[]
    }
  }[]
}

/** The whole report; the records have the faults that are named, and no other. */
export function reportOf(audited: Audited): Report {
  const folder = mkdtempSync(join(tmpdir(), 'audit-'))
  for (const [path, text] of filesOf(audited)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const { records, diagnostics } = loadRecords(folder)
  const report = JSON.parse(
    [...checkReport(computeEdition(records, { program: 'test' }), diagnostics)].join(''),
  ) as Report
  rmSync(folder, { recursive: true })
  const codes = report.diagnostics.map(({ code }) => code)
  expect(codes.filter((code) => code !== LOST_DOCUMENT)).toEqual(audited.faults ?? [])
  return report
}

/** Lines of revisions stand for certificates here: no document is made for them. */
const LOST_DOCUMENT = 'issued-missing'

function filesOf({
  lots,
  source = '',
  site = '',
  quay = '',
  files = {},
  ...audited
}: Audited): Map<string, string> {
  const { clause = 'property: moisture, at-most: 3.0 %', asOf = '2026-03-10' } = audited
  const shared = new Map(SHARED)
  const places = Object.keys(lots)
  return new Map([
    ...shared,
    ['laboratories/quay.yaml', `${shared.get('laboratories/quay.yaml') ?? ''}${quay}\n`],
    ['site.yaml', `title: Trial\nunits: SI\nas-of: ${asOf}\ncriteria: [alone]\ngrace: 7 d\n${site}\n`],
    [
      'criteria/alone.yaml',
      `title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\nclauses:\n  - { clause: c, ${clause} }\n`,
    ],
    ['sources/tuff.yaml', `name: Trial\nproducer: hill\nkind: raw-natural-pozzolan\n${source}\n`],
    ...places.map((lot, place): [string, string] => [
      `lots/tuff/${lot}.yaml`,
      lotText(lots[lot] ?? {}, places.length - 1 - place),
    ]),
    ...Object.entries(files),
  ])
}

/** A line of `revisions`: a certificate of the day. */
export function certificate(date: string, number = 0, more = ''): string {
  return `{ number: ${number}, date: ${date}, by: M. Okafor, function: quality manager, reason: released, digest: sha256-${'0'.repeat(64)}${more} }`
}
