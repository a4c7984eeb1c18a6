/**
 * The Edition: one whole computed state of the site, immutable, the only thing that pages and writers read.
 */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { Finding } from '../../core/checks/finding.ts'
import type { bestClass } from '../../core/judging/verdict.ts'
import type { SourceBackground } from '../../core/evidence/lot-evidence.ts'
import type { PlannedTest, Result, UnmadeResult } from '../../core/result/result.ts'
import type { Verdict } from '../../core/criteria/outcome.ts'
import type { DescribedCondition } from '../../records/records.ts'
import type {
  Condition,
  Control,
  Laboratory,
  Lot,
  Producer,
  Site,
  Source,
} from '../../records/schema/loaded-records.ts'
import type { CertificateDocument } from './document.ts'

export type CertificateState = 'draft' | 'provisional' | 'complete' | 'withdrawn'

export interface Revision {
  readonly number: number
  readonly date: string
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly digest: string
  readonly state: 'provisional' | 'complete' | 'withdrawn' | 'superseded'
  readonly replacedBy?: string
}

export interface LotEntry {
  /** SOURCE/LOT */
  readonly id: string
  readonly source: string
  readonly lot: string
  /** Printed lot number. */
  readonly number: string
  /** Earlier ids, SOURCE/LOT, whose addresses lead here. */
  readonly formerly: readonly string[]
  readonly class?: string
  /** Sampling time that orders the history: end of the first producer sample's window. */
  readonly sampled: string
  readonly record: Lot
  /** Computed today from the record, known by the as-of date. */
  readonly results: readonly Result[]
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
  /** Date of the withdrawal in force. */
  readonly withdrawn?: string
  /**
   * Best class met under sets with an order of merit, by set, with what stands in the way of the next; read
   * when asked.
   */
  readonly bestClass: (criterion: string) => ReturnType<typeof bestClass>
  /** One for each criterion in force for the lot whose kinds apply; the first governs. */
  readonly verdicts: readonly Verdict[]
  readonly state: CertificateState
  /** Drawn from the lot by the as-of date, in order of date. */
  readonly shipments: readonly ShipmentEntry[]
  /** By number, the last one in force. */
  readonly revisions: readonly Revision[]
  readonly findings: readonly Finding[]
  /**
   * The newest issued document (read anew at each call; ten thousand do not fit in memory), or the draft made
   * from today's records.
   */
  readonly certificate: () => CertificateDocument
  /** An earlier revision's document as issued. */
  readonly revisionDocument: (number: number) => CertificateDocument
}

export interface SeriesPoint {
  readonly lot: string
  /** Sampling time. */
  readonly at: string
  readonly value: number | null
  readonly status: 'valid' | 'not-valid' | 'pending' | 'withdrawn'
  readonly note?: string
  /** Mean of up to ten preceding valid results, and how many they are. */
  readonly precedingMean?: number
  readonly precedingCount?: number
}

export interface Series {
  readonly property: Result['property']
  readonly condition?: string
  readonly age?: string
  readonly unit: string
  readonly decimals: number
  readonly points: readonly SeriesPoint[]
}

export interface SourceEntry {
  readonly id: string
  readonly record: Source
  /** In order of sampling. */
  readonly lots: readonly LotEntry[]
  readonly series: readonly Series[]
  readonly criteria: readonly string[]
  readonly background: SourceBackground
  /** Dates of the events at which a series begins anew. */
  readonly restarts: readonly string[]
  /** Lots that are on record and not shown. */
  readonly unpublished: number
  readonly findings: readonly Finding[]
}

export interface ControlEntry {
  readonly id: string
  readonly record: Control
  readonly results: readonly Result[]
}

export interface ShipmentEntry {
  readonly bill: string
  readonly date: string
  readonly massT: number
  readonly massWritten: string
  readonly lot: string
  readonly consignee?: string
  readonly project?: string
  readonly seal?: string
}

export interface Edition {
  readonly asOf: string
  readonly site: Site
  /** Origin and base path ("/a/b/"), or only the base "/" without an address. */
  readonly address: { readonly origin: string | null; readonly base: string }
  readonly audience: 'public' | 'internal'
  readonly producers: ReadonlyMap<string, Producer>
  readonly laboratories: ReadonlyMap<string, Laboratory>
  readonly conditions: ReadonlyMap<string, DescribedCondition>
  readonly announcedConditions: ReadonlyMap<string, Condition>
  readonly controls: ReadonlyMap<string, ControlEntry>
  readonly criteria: ReadonlyMap<string, Criterion>
  readonly sources: ReadonlyMap<string, SourceEntry>
  readonly lots: ReadonlyMap<string, LotEntry>
  readonly shipments: readonly ShipmentEntry[]
  readonly methods: readonly {
    readonly id: string
    readonly title: string
    readonly summary: string
    readonly order: number
    readonly body: string
  }[]
  readonly program: string
}
