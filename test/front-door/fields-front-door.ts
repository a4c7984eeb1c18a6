/** Records as a user writes them, to what `check --json` prints and what each audience's certificates show. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { computeEdition } from '../../src/edition/compute.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import type { PrintedFact } from '../../src/edition/shape/printed-certificate.ts'
import { checkReport } from '../../src/edition/writers/check-report.ts'
import { loadRecords } from '../../src/records/load.ts'
import { SHARED } from './front-door.ts'

type Files = Readonly<Record<string, string>>

/** A set with one clause; moisture of every lot of `lotText` is 2.0 %. */
export const ALONE =
  'title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\nclauses:\n  - { clause: c, property: moisture, at-most: 3.0 % }\n'
export const TUFF = 'name: Tuff\nproducer: hill\nkind: raw-natural-pozzolan\n'

/** The shared text of a record, with lines added. */
export function withLines(path: string, lines: string): Files {
  return { [path]: `${new Map(SHARED).get(path) ?? ''}${lines}\n` }
}

/** @param work is given the folder, which is gone afterwards */
export function inFolder<T>(files: Files, work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'fields-'))
  const all = {
    'criteria/alone.yaml': ALONE,
    'sources/tuff.yaml': TUFF,
    ...Object.fromEntries(SHARED),
    ...files,
  }
  for (const [path, text] of Object.entries(all)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  try {
    return work(folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

export interface Told {
  readonly internal: Edition
  readonly public: Edition
  /** What `check --json` prints. */
  readonly report: Report
  readonly diagnostics: readonly string[]
}

interface Report {
  readonly lots: readonly ReportedLot[]
  readonly sources: readonly { readonly findings: readonly ReportedFinding[] }[]
}
export interface ReportedLot {
  readonly id: string
  readonly results: readonly {
    readonly key: string
    readonly property: string
    readonly value: number
    readonly interval: unknown
    readonly valid: boolean
    readonly n: number | null
    readonly reasons: readonly string[]
  }[]
  readonly verdicts: readonly {
    readonly criterion: string
    readonly outcome: string
    readonly reasons: readonly string[]
    readonly clauses: readonly { readonly id: string; readonly outcome: string; readonly reason: string }[]
  }[]
  readonly findings: readonly ReportedFinding[]
}
interface ReportedFinding {
  readonly id: string
  readonly check: string
  readonly severity: string
  readonly sentence: string
  readonly evidence: readonly string[]
}

export function told(files: Files): Told {
  return inFolder(files, (folder) => {
    const { records, diagnostics } = loadRecords(folder)
    const internal = computeEdition(records, { program: 'test' })
    return {
      internal,
      public: forAudience(internal, 'public'),
      report: JSON.parse([...checkReport(internal, diagnostics)].join('')) as Report,
      diagnostics: diagnostics.map(({ file, line, code, message }) => `${file}:${line} ${code}: ${message}`),
    }
  })
}

/** The particulars of a lot's certificate by label. */
export function particulars(edition: Edition, id: string): Map<string, PrintedFact> {
  const { shared, lot } = edition.lot(id).certificate()
  const { before, after } = shared.origin
  return new Map([...before, ...lot.identification, ...after].map((fact) => [fact.label, fact]))
}
