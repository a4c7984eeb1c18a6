/**
 * What a certificate states of its lot on one day, as plain data with sentences: made from the records by
 * `certificate/`, printed by `printed/`, and kept nowhere.
 */
import type { VerdictStanding } from '../../core/criteria/verdict-standing.ts'
import type { Figure } from '../../core/result/working.ts'
import type { Duty } from '../../core/measure/duty.ts'
import type { WithTexts } from '../../core/measure/texts-of-times.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import type { Result } from '../../core/result/result.ts'
import type { Interval } from '../../core/statistics/ratio-interval.ts'
import type { CertificateState } from '../../core/evidence/certificate-state.ts'
import type { NamedTest } from '../../words/standing.ts'
import type { WordedVerdict } from '../../words/worded-verdict.ts'

/** The casting stands with its mortar; reasons are worded. */
export interface CertificateResult
  extends WithTexts<Omit<Result, 'working' | 'begun' | 'reasons' | 'interval'>> {
  /** Sentences without a full stop. */
  readonly reasons: readonly string[]
  readonly interval?: Omit<Interval, 'method'> & { readonly method: string }
  /** Whether the property (and condition) was in the laboratory's accreditation scope on the date tested. */
  readonly accredited: boolean
  readonly subcontracted?: string
  /** Of an index of two mortars: the means that it is the ratio of. */
  readonly mortars?: { readonly test: Figure; readonly control: Figure }
}

/** One mortar and its control, as cast, with every reading in its written form. */
export interface CertificateMortar {
  readonly condition: string
  readonly laboratory: string
  readonly sample: string
  readonly cast: string
  readonly flow?: string
  readonly water?: string
  readonly deviations?: string
  /** Absent where no batch is on record: its strength may stand beside the readings. */
  readonly control?: {
    readonly id: string
    readonly cast: string
    readonly flow?: string
    readonly water?: string
    readonly cementLot?: string
    readonly cementType?: string
    readonly cementAlkalis?: string
  }
  readonly readings: readonly CertificateReading[]
}

/** Readings of test or control mortar at one age. */
export interface CertificateReading {
  readonly of: 'test' | 'control'
  readonly what: 'strength' | 'resistivity'
  readonly age: string
  readonly tested: string
  readonly temperature?: string
  readonly endContact?: string
  readonly frequency?: string
  readonly conditioning?: string
  readonly verification?: string
  readonly saturation?: string
  readonly specimens: readonly {
    readonly mark: string
    readonly reading: string
    readonly size?: string
    readonly excluded?: string
  }[]
  readonly deviations?: string
}

export interface CertificateCriterion extends VerdictStanding {
  readonly id: string
  readonly title: string
  readonly designation?: string
  readonly edition: string
  readonly supersededBy?: string
  readonly trial: boolean
  /** That it judges activity alone. */
  readonly scope?: string
  /** That some of its limits are as read, and that nobody has checked them; unsaid where it is a trial anyway. */
  readonly asRead?: true
  /** How many parts of the specification the set leaves out. */
  readonly lacks?: number
  readonly decisionRule: string
  /** What the rule implies for the risk, a sentence without a full stop. */
  readonly risk: string
}

/** How to reach somebody, as written. */
export interface Reachable {
  readonly telephone?: string
  readonly mail?: string
}

export interface CertificateFacts {
  /** SOURCE/LOT */
  readonly certificate: string
  /** null for a draft. */
  readonly revision: number | null
  readonly state: CertificateState
  readonly issued: string | null
  /** Results that are due or overdue. */
  readonly awaited: readonly NamedTest[]
  readonly asOf: string
  readonly by: {
    readonly name: string
    readonly function: string
    readonly independent: boolean | null
  } | null
  readonly reason: string | null
  readonly replaces: { readonly revision: number; readonly date: string } | null
  /** The lot that replaces a withdrawn one; without its id where that is not to be named. */
  readonly replacedBy: { readonly id: string | null; readonly text: string } | null
  readonly site: string
  readonly notice: string | null
  readonly producer: Reachable & {
    readonly id: string
    readonly name: string
    readonly address: readonly string[]
    readonly plant: string | null
    readonly marketingEntity: string | null
    readonly letterhead?: readonly string[]
  }
  readonly source: {
    readonly id: string
    readonly name: string
    readonly kind: MaterialKind
    readonly tradeName: string | null
    readonly unit: string | null
    readonly deposit: string | null
    readonly coalSources: readonly string[]
    readonly coFiring: string | null
    readonly additives: string | null
    readonly safetyDataSheet: string | null
    /** In force on the day of the certificate. */
    readonly agencyNumbers?: readonly { readonly agency: string; readonly number: string }[]
  }
  readonly lot: {
    readonly number: string
    readonly class: string | null
    readonly produced: { readonly from: string; readonly to: string }
    readonly quantityT: number
    readonly quantity: string
    readonly silo: string | null
    readonly seals: readonly string[]
    readonly feed: string | null
    readonly blend: readonly { readonly source: string; readonly share: string }[]
    readonly note: string | null
    readonly purchaseOrder?: string
  }
  readonly samples: readonly {
    readonly id: string
    readonly kind: string
    readonly duty: Duty
    readonly of: string | null
    readonly taken: string | null
    /** First and last moment of its taking, one and the same for a grab. */
    readonly begun: string | null
    readonly ended: string | null
    readonly place: string | null
    readonly by: string | null
    readonly method: string | null
    readonly increments: number | null
    readonly mass: string | null
    readonly container: string | null
    readonly represents: string | null
    readonly to: string | null
    readonly received: string | null
    readonly retained: string | null
  }[]
  readonly laboratories: readonly (Reachable & {
    readonly id: string
    readonly name: string
    readonly address: readonly string[]
    readonly standing: string
    readonly accreditation: string | null
    /** No accreditation of the laboratory is on record for any date. */
    readonly accreditationUnknown?: true
  })[]
  readonly conditions: readonly {
    readonly id: string
    readonly title: string
    readonly standing: 'standard' | 'modified' | 'details-to-be-entered'
    readonly particulars: readonly { readonly label: string; readonly text: string }[]
    /** "20 % of the cement replaced by mass". */
    readonly replacement: string
  }[]
  readonly results: readonly CertificateResult[]
  readonly mortars: readonly CertificateMortar[]
  readonly deviations: readonly string[]
  /** Specimens dropped, tests repeated and results left out, with what they belong to. */
  readonly departures?: readonly { readonly of: string; readonly reason: string }[]
  readonly criteria: readonly CertificateCriterion[]
  /** In the order of `criteria`; the first governs. */
  readonly verdicts: readonly WordedVerdict[]
  /** What a site prints first. */
  readonly units: 'SI' | 'US'
}
