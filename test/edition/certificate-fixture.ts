/** A small invented certificate, and an edition around it, for tests of the views that draw it. */
import { readMoment } from '../../src/core/measure/moment.ts'
import type {
  CertificateFacts,
  CertificateMortar,
  CertificateResult,
} from '../../src/edition/shape/certificate-facts.ts'
import type { Edition, LotEntry } from '../../src/edition/shape/edition.ts'

type Clause = CertificateFacts['verdicts'][number]['clauses'][number]
type Verdict = CertificateFacts['verdicts'][number]

export const LOT = 'hill/H-1'

/** Loss on ignition, as reported by the one laboratory. */
export function result(more: Partial<CertificateResult> = {}): CertificateResult {
  const property = more.property ?? 'loss-on-ignition'
  return {
    key: [property, more.condition, more.age, '', 'quay', 'A'].join('|'),
    property,
    method: 'ASTM C311-22',
    laboratory: 'quay',
    sample: 'A',
    sampleKind: 'composite',
    role: 'producer',
    value: 2.14,
    unit: '%',
    decimals: 2,
    n: 2,
    tested: '2026-03-12',
    valid: true,
    reasons: [],
    accredited: true,
    ...more,
  }
}

export function index(more: Partial<CertificateResult> = {}): CertificateResult {
  return result({
    property: 'strength-activity-index',
    condition: 'warm',
    age: '28 d',
    value: 83.26,
    decimals: 1,
    n: 3,
    control: 'K1',
    controlValue: 34.13,
    ...more,
  })
}

/** "at most 10.0 %", met by 2.14 %. */
export function clause(more: Partial<Clause> = {}): Clause {
  return {
    id: 'loi',
    title: 'Loss on ignition',
    outcome: 'meets',
    decides: false,
    information: false,
    property: 'loss-on-ignition',
    kind: 'value',
    value: 2.14,
    compared: 2.1,
    unit: '%',
    decimals: 1,
    limit: { operator: 'at-most', values: [10], unit: '%', written: ['10.0 %'], layer: 'set' },
    result: result().key,
    reason: '2.1 % (2.14 before rounding) meets the limit, at most 10.0 %',
    ...more,
  }
}

export function verdict(clauses: readonly Clause[], more: Partial<Verdict> = {}): Verdict {
  return {
    criterion: 'set',
    edition: '1',
    class: 'N',
    outcome: 'meets',
    decidedBy: [],
    reasons: ['meets all 2 clauses that apply'],
    clauses,
    trial: false,
    ...more,
  }
}

export function mortar(more: Partial<CertificateMortar> = {}): CertificateMortar {
  return {
    condition: 'warm',
    laboratory: 'quay',
    sample: 'A',
    cast: '2026-03-10T09:40',
    flow: '108 %',
    control: { id: 'K1', cast: '2026-03-10T09:00', flow: '104 %', cementLot: 'PC-1' },
    readings: [],
    ...more,
  }
}

export const CONDITIONS: CertificateFacts['conditions'] = [
  {
    id: 'warm',
    title: '50 %, 50 °C',
    standing: 'modified',
    replacement: '50 % of the cement replaced by mass',
    particulars: [
      { label: 'Replacement', text: '50 % of the cement by mass' },
      { label: 'Water', text: 'constant w/cm 0.485' },
      { label: 'Curing', text: 'saturated lime water, 50 °C ± 2 °C' },
    ],
  },
  {
    id: 'plain',
    title: '20 %, 23 °C',
    standing: 'standard',
    replacement: '20 % of the cement replaced by mass',
    particulars: [],
  },
  {
    id: 'later',
    title: 'autoclave',
    standing: 'details-to-be-entered',
    replacement: '25 % of the cement replaced by mass',
    particulars: [],
  },
]

export function certificate(more: Partial<CertificateFacts> = {}): CertificateFacts {
  return {
    certificate: LOT,
    revision: 1,
    state: 'complete',
    issued: '2026-04-08',
    asOf: '2026-04-08',
    by: { name: 'M. Okafor', function: 'quality manager', independent: true },
    reason: '28 d results added',
    replaces: { revision: 0, date: '2026-03-20' },
    replacedBy: null,
    site: 'Register of the vale',
    notice: null,
    producer: {
      id: 'hill',
      name: 'Hill Pozzolans',
      address: ['Mill Lane 2', 'Hill'],
      plant: 'Mill 2',
      marketingEntity: null,
    },
    source: {
      id: 'hill',
      name: 'Hill tuff',
      kind: 'raw-natural-pozzolan',
      tradeName: null,
      unit: null,
      deposit: 'Bench 3',
      coalSources: [],
      coFiring: null,
      additives: null,
      safetyDataSheet: null,
    },
    lot: {
      number: 'H-1',
      class: 'N',
      produced: { from: '2026-03-02', to: '2026-03-08' },
      quantityT: 1450,
      quantity: '1450 t',
      silo: 'S2',
      seals: [],
      feed: null,
      blend: [],
      note: null,
    },
    samples: [],
    laboratories: [
      { id: 'quay', name: 'Quay laboratory', address: ['Quay 4'], standing: 'in-house', accreditation: null },
    ],
    conditions: CONDITIONS,
    results: [result()],
    mortars: [],
    deviations: [],
    criteria: [
      {
        id: 'set',
        title: 'Limits of the vale',
        designation: 'VALE 1',
        edition: '1',
        trial: false,
        decisionRule: 'as specified',
        risk: 'half of such lots are accepted',
      },
    ],
    verdicts: [verdict([clause()])],
    units: 'SI',
    awaited: [],
    ...more,
  }
}

/** What the views read of an edition; it has the source, the set and the laboratory, and no other lot. */
export function editionAround(more: Partial<Edition> = {}): Edition {
  const has = (...ids: string[]) => new Map(ids.map((id) => [id, { id, number: id, name: `name of ${id}` }]))
  return {
    address: { origin: 'https://example.org', base: '/a/' },
    asOf: '2026-04-10',
    site: { title: 'Register of the vale', units: 'SI', criteria: ['set'] },
    sources: has('hill'),
    criteria: has('set'),
    laboratories: has('quay'),
    lots: new Map(),
    ...more,
  } as unknown as Edition
}

export function entry(more: Partial<LotEntry> = {}): LotEntry {
  return {
    id: LOT,
    number: 'H-1',
    state: 'complete',
    revisions: [revision(0, '2026-03-20'), revision(1, '2026-04-08')],
    ...more,
  } as unknown as LotEntry
}

export function revision(
  number: number,
  date: string,
  more: Partial<LotEntry['revisions'][number]> = {},
): LotEntry['revisions'][number] {
  return {
    number,
    date: readMoment(date),
    by: 'M. Okafor',
    function: 'quality manager',
    reason: 'as issued',
    digest: `sha256-${number}`,
    state: 'complete',
    ...more,
  }
}
