/**
 * The certificate document: everything a certificate page shows of its results and judgement, as plain JSON.
 * `issue`
 * freezes it in content/issued; a page of an issued lot shows the frozen document and nothing computed later.
 */
import type { WithTexts } from '../../core/measure/texts-of-times.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import type { Result } from '../../core/result/result.ts'
import type { Interval } from '../../core/statistics/ratio-interval.ts'
import type { WorkingLine } from '../../words/working-lines.ts'
import type { WordedVerdict } from '../../words/worded-verdict.ts'

/** The casting stands with its mortar; what was said of a result is frozen as it was said. */
export interface DocumentResult
  extends WithTexts<Omit<Result, 'working' | 'begun' | 'reasons' | 'interval'>> {
  /** Sentences without a full stop. */
  readonly reasons: readonly string[]
  readonly interval?: Omit<Interval, 'method'> & { readonly method: string }
  readonly working: readonly WorkingLine[]
  /** Whether the property (and condition) was in the laboratory's accreditation scope on the date tested. */
  readonly accredited: boolean
  readonly subcontracted?: string
}

/** One mortar and its control, as cast, with every reading in its written form. */
export interface DocumentMortar {
  readonly condition: string
  readonly laboratory: string
  readonly sample: string
  readonly cast: string
  readonly flow?: string
  readonly water?: string
  readonly deviations?: string
  readonly control: {
    readonly id: string
    readonly cast: string
    readonly flow?: string
    readonly water?: string
    readonly cementLot: string
    readonly cementType?: string
    readonly cementAlkalis?: string
  }
  readonly readings: readonly DocumentReading[]
}

/** Readings of test or control mortar at one age. */
export interface DocumentReading {
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

export interface DocumentCriterion {
  readonly id: string
  readonly title: string
  readonly designation?: string
  readonly edition: string
  readonly supersededBy?: string
  readonly trial: boolean
  readonly decisionRule: string
  /**
   * What the rule implies for the risk, a sentence without a full stop; documents of an earlier program have
   * none.
   */
  readonly risk?: string
}

export interface DocumentHistory {
  readonly property: Result['property']
  readonly condition?: string
  readonly age?: string
  readonly unit: string
  readonly decimals: number
  /** Oldest first, this lot last. */
  readonly points: readonly {
    readonly lot: string
    readonly at: string
    readonly value: number | null
    readonly status: 'valid' | 'not-valid' | 'pending'
  }[]
}

export interface CertificateDocument {
  readonly format: 1
  /** SOURCE/LOT */
  readonly certificate: string
  /** null for a draft. */
  readonly revision: number | null
  readonly state: 'draft' | 'provisional' | 'complete' | 'withdrawn'
  readonly issued: string | null
  readonly asOf: string
  readonly by: {
    readonly name: string
    readonly function: string
    readonly independent: boolean | null
  } | null
  readonly reason: string | null
  readonly replaces: { readonly revision: number; readonly date: string } | null
  readonly replacedBy: string | null
  readonly program: string
  readonly site: string
  readonly notice: string | null
  readonly producer: {
    readonly id: string
    readonly name: string
    readonly address: readonly string[]
    readonly plant: string | null
    readonly marketingEntity: string | null
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
  }
  readonly samples: readonly {
    readonly id: string
    readonly kind: string
    readonly of: string | null
    readonly taken: string | null
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
  readonly laboratories: readonly {
    readonly id: string
    readonly name: string
    readonly address: readonly string[]
    readonly standing: string
    readonly accreditation: string | null
  }[]
  readonly conditions: readonly {
    readonly id: string
    readonly title: string
    readonly standing: 'standard' | 'modified' | 'details-to-be-entered'
    readonly particulars: readonly { readonly label: string; readonly text: string }[]
  }[]
  readonly results: readonly DocumentResult[]
  readonly mortars: readonly DocumentMortar[]
  readonly deviations: readonly string[]
  readonly criteria: readonly DocumentCriterion[]
  /** In the order of `criteria`; the first governs. */
  readonly verdicts: readonly WordedVerdict[]
  readonly history: readonly DocumentHistory[]
  /**
   * The lot's record and the records it refers to, as written, without shipments, verification, revisions and
   * earlier ids; what a later build compares with.
   */
  readonly record: unknown
}
