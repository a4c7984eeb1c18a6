/**
 * The Edition: one whole computed state of the site, immutable, the only thing that pages and writers read.
 * It holds a row for each lot and source; the whole of one is given when asked for and not to be kept, so that
 * nothing forces all lots into memory at once.
 */
import type { SourceAgency } from '../../core/agency/source-agency.ts'
import type { Moment } from '../../core/measure/moment.ts'
import type { Age } from '../../core/measure/age.ts'
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { CertificateState } from '../../core/evidence/certificate-state.ts'
import type { AtLimit } from '../../core/checks/at-the-limits.ts'
import type { ChecksRun } from '../../core/checks/checked.ts'
import type { Finding } from '../../core/checks/finding.ts'
import type { LaboratoryHistory } from '../../core/history/laboratory-history.ts'
import type { SourceHistory } from '../../core/history/source-history.ts'
import type { LotOverTime } from '../../core/checks/on-shipping.ts'
import type { BestClass } from '../../core/judging/verdict.ts'
import type { SourceBackground } from '../../core/evidence/lot-evidence.ts'
import type { AwaitedTest } from '../../core/result/awaited-test.ts'
import type { Observed } from '../../core/result/observation.ts'
import type { PlannedTest, Result, UnmadeResult } from '../../core/result/result.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import type { VerdictStanding } from '../../core/criteria/verdict-standing.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import type { DescribedCondition } from '../../records/records.ts'
import type { MethodPage } from '../../records/yaml/method-page.ts'
import type {
  Condition,
  Control,
  Laboratory,
  Lot,
  Producer,
  Site,
  Source,
} from '../../records/schema/loaded-records.ts'
import type { Withheld } from '../../records/issued/private-part.ts'
import type { LotHistory } from './lot-history.ts'
import type { IfPlain } from './plain-text.ts'
import type { ListedStudy, StudyEntry } from './study-entry.ts'
import type { PrintedCertificate, PrintedLot, PrintedReadings, PrintedShared } from './printed-certificate.ts'

/** A certificate as its page draws it: as printed, with the readings that it rests on as written. */
export interface Certificate {
  /** null for a draft, as its digest. */
  readonly revision: number | null
  readonly digest: string | null
  readonly shared: PrintedShared
  readonly lot: PrintedLot
  readonly printed: PrintedCertificate
  readonly readings: readonly PrintedReadings[]
}

export interface Revision {
  readonly number: number
  readonly date: Moment
  readonly by: string
  readonly function: string
  readonly reason: string
  readonly digest: string
  readonly state: 'provisional' | 'complete' | 'withdrawn' | 'superseded'
  /** By the id that the lot has today, whatever it had when this was issued. */
  readonly replacedBy?: string
}

/** A value that an issued certificate prints, with what it is today. */
export interface ChangedValue {
  readonly property: Result['property']
  readonly condition: string | undefined
  readonly age: string | undefined
  readonly issued: string
  /** null where none of its results counts today. */
  readonly today: string | null
}

/** What names a lot and says where it stands, in a list and in full. */
interface LotHead {
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
  readonly sampled: Moment
  /** Date of the withdrawal in force. */
  readonly withdrawn?: Moment
  readonly state: CertificateState
}

/** A lot as lists and columns need it; at most 2 KB as JSON, so that the rows of all lots fit in memory. */
export interface ListedLot extends LotHead {
  readonly tonnes: number
  /** Outcome under each criterion in force whose kinds apply; the governing one first. */
  readonly outcomes: readonly ({
    readonly criterion: string
    readonly outcome: Outcome
  } & VerdictStanding)[]
  /** The lot that replaces it, where it is withdrawn. */
  readonly replacedBy?: string
  /** Results that are due or overdue, the longest awaited first; none of a withdrawn lot. */
  readonly awaited: readonly AwaitedTest[]
  /** The newest revision; null for a draft. */
  readonly issued: { readonly number: number; readonly date: Moment } | null
  /** Numbers of the revisions before the newest. */
  readonly earlier: readonly number[]
  readonly findingCount: number
}

/** Everything about one lot. */
export interface LotEntry extends LotHead {
  readonly record: Lot
  /** Computed today from the record, known by the as-of date. */
  readonly results: readonly Result[]
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
  /**
   * Best class met under sets with an order of merit, by set, with what stands in the way of the next; read
   * when asked.
   */
  readonly bestClass: (criterion: string) => BestClass | null
  /** One for each criterion in force for the lot whose kinds apply; the first governs. */
  readonly verdicts: readonly Verdict[]
  /** Ids of criteria that nothing but the project of a shipment asks for. */
  readonly ofProjects: readonly string[]
  /** Drawn from the lot by the as-of date, in order of date. */
  readonly shipments: readonly ShipmentEntry[]
  /** What may have been drawn from the lot or from another one, by the as-of date, in order of date. */
  readonly sharedShipments: readonly ShipmentEntry[]
  /** When its results became known, and since when it has not met: what shipments are held against. */
  readonly overTime: LotOverTime
  /** By number, the last one in force. */
  readonly revisions: readonly Revision[]
  readonly findings: readonly Finding[]
  /** What the newest revision prints otherwise than it is today. */
  readonly changedValues: readonly ChangedValue[]
  /** Keys of the results of mortars that the newest issued document does not state. */
  readonly unstated: readonly string[]
  /** The lot's activity indices among those of earlier lots, made when asked for. */
  readonly history: () => LotHistory
  /**
   * The newest issued certificate, its document read anew at each call, or a draft made from today's records.
   * @param shown what need not be withheld; everything without it
   */
  readonly certificate: (shown?: readonly Withheld[]) => Certificate
  /** A revision's certificate as issued. @throws RangeError for a revision that the lot does not have */
  readonly revisionCertificate: (number: number, shown?: readonly Withheld[]) => Certificate
}

export interface SeriesPoint {
  readonly lot: string
  /** Sampling time. */
  readonly at: Moment
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
  readonly age?: Age
  readonly unit: string
  readonly decimals: number
  readonly points: readonly SeriesPoint[]
}

/** A source as lists need it. */
export interface ListedSource {
  readonly id: string
  readonly name: string
  /** Id of the producer. */
  readonly producer: string
  readonly kind: MaterialKind
  readonly class?: string
  /** Criteria that its lots are judged under, the governing one of the newest lot first. */
  readonly criteria: readonly string[]
  /** Findings about the source itself; those of its lots are counted in their rows. */
  readonly findingCount: number
}

/** Everything about one source but its lots. */
export interface SourceEntry {
  readonly id: string
  readonly record: Source
  readonly series: readonly Series[]
  /** What statistics say of its results, made when first asked for. */
  readonly history: () => SourceHistory
  readonly criteria: readonly string[]
  readonly background: SourceBackground
  /** Dates of the events at which a series begins anew. */
  readonly restarts: readonly Moment[]
  /** Lots that are on record and not shown. */
  readonly unpublished: number
  /** Printed numbers of its lots whose records have a fault and are not among the lots. */
  readonly faultyNumbers: readonly string[]
  readonly findings: readonly Finding[]
  /**
   * An agency's results beside the producer's, computed when asked for; null where they are not published.
   * @param isShown which lots may be named; all without it
   */
  readonly agency: (isShown?: (lot: string) => boolean) => SourceAgency | null
  /**
   * Results at the limits that they are judged by.
   * @param isShown which lots may be counted; all without it, counted once
   */
  readonly atLimits: (isShown?: (lot: string) => boolean) => readonly AtLimit[]
  /** The audit checks on the source and its lots: what was looked at, and how much chance alone is expected to raise. */
  readonly checks: ChecksRun
  /**
   * The same checks on some of its lots alone, made anew at each call.
   * @param isShown which lots are looked at
   */
  readonly auditOf: (isShown: (lot: string) => boolean) => Pick<SourceEntry, 'findings' | 'checks'>
}

export interface ControlEntry extends Observed {
  readonly id: string
  readonly record: Control
}

export interface ShipmentEntry {
  readonly bill: string
  readonly date: Moment
  readonly massT: number
  readonly massWritten: string
  readonly source: string
  /** Lots that it may have come from, SOURCE/LOT; one where it is known. */
  readonly lots: readonly string[]
  /** It may have come from a lot that is not shown, too. */
  readonly unshown?: true
  /** Terminal or silo that it was loaded from, where lots lay together. */
  readonly place?: string
  readonly consignee?: string
  readonly project?: string
  readonly purchaseOrder?: string
  readonly seal?: string
}

/** What says by itself what it is made of: `lot(id)`, `source(id)`, the three of a laboratory, `study(id)`, a row of `controls`. */
export type EditionPart = `${'lot' | 'source' | 'laboratory' | 'study' | 'control'} ${string}`

export interface Edition {
  readonly asOf: Moment
  /** Without its as-of day, which most of what reads the site says nothing of. */
  readonly site: Omit<Site, 'as-of'>
  /** The as-of day that site.yaml states. */
  readonly statedAsOf?: Moment
  /** Origin and base path ("/a/b/"), or only the base "/" without an address. */
  readonly address: { readonly origin: string | null; readonly base: string }
  readonly audience: 'public' | 'internal'
  readonly producers: ReadonlyMap<string, Producer>
  readonly laboratories: ReadonlyMap<string, Laboratory>
  readonly conditions: ReadonlyMap<string, DescribedCondition>
  readonly announcedConditions: ReadonlyMap<string, Condition>
  readonly controls: ReadonlyMap<string, ControlEntry>
  readonly criteria: ReadonlyMap<string, Criterion>
  readonly sources: ReadonlyMap<string, ListedSource>
  /** In order of source, then of sampling. */
  readonly lots: ReadonlyMap<string, ListedLot>
  /** A source's lots in order of sampling; none for a source that is not in the edition. */
  readonly lotsOf: (source: string) => readonly ListedLot[]
  /** The whole of a lot of `lots`. @throws RangeError for another id */
  readonly lot: (id: string) => LotEntry
  /** What statistics say of the control batches of a laboratory, made when first asked for. */
  readonly laboratoryHistory: (laboratory: string) => LaboratoryHistory
  /** What the audit checks ask of a laboratory, made when first asked for. */
  readonly laboratoryFindings: (laboratory: string) => readonly Finding[]
  /** How often they looked, lots left out of account. */
  readonly laboratoryChecks: (laboratory: string) => ChecksRun
  /** The whole of a source of `sources`. @throws RangeError for another id */
  readonly source: (id: string) => SourceEntry
  /**
   * What the batches of a source's laboratories say of scatter today, for a further lot of it; what its lots were judged with
   * is in its `background`. @throws RangeError for another id
   */
  readonly scatterFor: (source: string) => NonNullable<SourceBackground['pooled']>
  /** Of one source, a line each, in order of date, then of bill; none for a source that is not in the edition. */
  readonly shipmentsOf: (source: string) => readonly ShipmentEntry[]
  readonly studies: ReadonlyMap<string, ListedStudy>
  /** The whole of a study of `studies`, computed when first asked for. @throws RangeError for another id */
  readonly study: (id: string) => StudyEntry
  readonly methods: readonly MethodPage[]
  /**
   * Digest of all that a part of the edition is made of: the same only where the part is the same.
   * @returns null where nothing tells, so that the part must be taken for another one
   */
  readonly restsOn: (part: EditionPart) => string | null
  /**
   * What one source gives to something made of several: made once while the source is the same, kept from build to build,
   * and given without reading its lots.
   * @param name of what is asked for, one for each way of making it
   * @param make reads this source and its lots, what all sources share, and nothing of other sources
   * @param beside what else it rests on, as text; asked only where parts are kept
   */
  readonly ofSource: <Part>(
    source: string,
    name: string,
    make: () => Part & IfPlain<Part>,
    beside?: () => string,
  ) => Part
  readonly program: string
  /** What the program ships for others' sites; absent where nobody handed it in. */
  readonly shipped?: Pick<Edition, 'criteria' | 'conditions'>
}
