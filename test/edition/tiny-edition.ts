/** An edition of literal lots and sources, for what reads editions: nothing in it was computed. */
import { checksRun } from '../../src/core/checks/checked.ts'
import { readAge } from '../../src/core/measure/age.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import type { Finding } from '../../src/core/checks/finding.ts'
import type { Outcome } from '../../src/core/criteria/outcome.ts'
import type { PlannedTest } from '../../src/core/result/result.ts'
import type { Verdict } from '../../src/core/criteria/verdict.ts'
import type {
  Edition,
  LotEntry,
  Revision,
  ShipmentEntry,
  SourceEntry,
} from '../../src/edition/shape/edition.ts'
import { listedLot, listedSource, lotsBySource } from '../../src/edition/shape/listing.ts'
import type { Lot, Site, Source } from '../../src/records/schema/loaded-records.ts'

/** A verdict without clauses. */
export function verdict(criterion: string, outcome: Outcome, more: Partial<Verdict> = {}): Verdict {
  return {
    criterion,
    edition: '1',
    class: null,
    outcome,
    decidedBy: [],
    reasons: [],
    clauses: [],
    trial: false,
    ...more,
  }
}

export function revision(number: number, date: string, more: Partial<Revision> = {}): Revision {
  const text = { by: 'M. Okafor', function: 'quality manager', reason: 'released', digest: 'sha256-0' }
  return { number, date: readMoment(date), ...text, state: 'complete', ...more }
}

export function finding(about: string, severity: Finding['severity'] = 'warning'): Finding {
  const id = `changed-after-issue/${about}`
  const params = { lot: about, revision: 0, places: 1, changes: [] }
  return { id, severity, about, reason: { code: 'changed-after-issue', params } }
}

export function shipment(lot: string, bill: string, date: string, massT = 25): ShipmentEntry {
  return {
    source: lot.slice(0, lot.indexOf('/')),
    lots: [lot],
    bill,
    date: readMoment(date),
    massT,
    massWritten: `${massT} t`,
  }
}

/** A strength index at 28 d that has not come. */
export function plannedTest(due: string, overdueSince?: string): PlannedTest {
  return {
    property: 'strength-activity-index',
    condition: 'hot',
    age: readAge('28 d'),
    unread: 'both',
    laboratory: 'quay',
    sample: 'C',
    sampleKind: 'composite',
    begun: readMoment('2026-03-05'),
    due: readMoment(due),
    ...(overdueSince === undefined ? {} : { overdueSince: readMoment(overdueSince) }),
  }
}

/** A draft of 1000 t, sampled on 5 March 2026. */
export function tinyLot(id: string, more: Partial<LotEntry> = {}): LotEntry {
  const [source = '', lot = ''] = id.split('/')
  const record = {
    produced: { from: readMoment('2026-03-01'), to: readMoment('2026-03-05') },
    quantity: { kind: 'mass', value: 1000, unit: 't', written: '1000 t', decimals: 0 },
    samples: [],
  }
  return {
    id,
    source,
    lot,
    number: lot,
    formerly: [],
    sampled: readMoment('2026-03-05'),
    state: 'draft',
    record: record as unknown as Lot,
    results: [],
    unmade: [],
    planned: [],
    bestClass: () => null,
    ofProjects: [],
    verdicts: [],
    shipments: [],
    sharedShipments: [],
    overTime: { ages: [], revisions: [], failed: null, failing: [] },
    revisions: [],
    findings: [],
    changedValues: [],
    unstated: [],
    history: () => [],
    certificate: () => {
      throw new RangeError(`certificate needs a computed lot, got ${id}`)
    },
    revisionCertificate: (number) => {
      throw new RangeError(`revisionCertificate needs a computed lot, got ${id} ${number}`)
    },
    ...more,
  }
}

const NO_LIMIT = { shown: false, reason: { code: 'no-limit', params: {} } } as const

const NO_CHECKS = checksRun([], 0)

/** A source of fly ash named after its id. */
export function tinySource(id: string, more: Partial<SourceEntry> = {}): SourceEntry {
  const record = { name: `Ash of ${id}`, producer: 'works', kind: 'coal-fly-ash' }
  return {
    id,
    record: record as Source,
    series: [],
    history: () => ({
      asOf: readMoment('2026-03-05'),
      series: [],
      closest: NO_LIMIT,
      uniformity: [],
      predictions: [],
    }),
    criteria: [],
    background: { kind: 'coal-fly-ash', approvals: [], events: [], requested: {}, repeatability: {} },
    restarts: [],
    unpublished: 0,
    faultyNumbers: [],
    findings: [],
    agency: () => null,
    atLimits: () => [],
    checks: NO_CHECKS,
    auditOf: () => ({ findings: more.findings ?? [], checks: more.checks ?? NO_CHECKS }),
    ...more,
  }
}

/** @param lots in order of source and sampling, all of sources given */
export function tinyEdition(
  sources: readonly SourceEntry[],
  lots: readonly LotEntry[],
  more: Partial<Edition> = {},
): Edition {
  const rows = new Map(lots.map((lot) => [lot.id, listedLot(lot)]))
  const entry = <Entry extends { readonly id: string }>(all: readonly Entry[], id: string): Entry => {
    const found = all.find((candidate) => candidate.id === id)
    if (found === undefined) throw new RangeError(`tinyEdition needs a known id, got ${id}`)
    return found
  }
  return {
    asOf: readMoment('2026-04-10'),
    site: { title: 'Register', units: 'SI', criteria: [] } as unknown as Site,
    address: { origin: 'https://example.org', base: '/a/' },
    audience: 'internal',
    producers: new Map(),
    laboratories: new Map(),
    conditions: new Map(),
    announcedConditions: new Map(),
    controls: new Map(),
    criteria: new Map(),
    sources: new Map(sources.map((source) => [source.id, listedSource(source)])),
    lots: rows,
    lotsOf: lotsBySource(rows),
    lot: (id) => entry(lots, id),
    source: (id) => entry(sources, id),
    laboratoryHistory: (laboratory) => ({ laboratory, series: [] }),
    scatterFor: () => ({}),
    laboratoryFindings: () => [],
    laboratoryChecks: () => checksRun([], 0),
    shipmentsOf: (source) => lots.flatMap((lot) => (lot.source === source ? lot.shipments : [])),
    studies: new Map(),
    study: (id) => {
      throw new RangeError(`tinyEdition needs a known id, got ${id}`)
    },
    methods: [],
    restsOn: () => null,
    ofSource: (_source, _name, make) => make(),
    program: 'test',
    ...more,
  }
}
