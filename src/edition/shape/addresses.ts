/**
 * Every address of the site, made in one place. Paths are relative to the base and directory addresses end in
 * "/".
 */
import type { Edition } from './edition.ts'

/** Folder of the tables for query engines. */
const TABLES = 'data/tables'

/** Stands in a folder's name for no value. Source: Apache Hive, hive.exec.default.partition.name; engines read null. */
const HIVE_NULL = '__HIVE_DEFAULT_PARTITION__'

export const paths = {
  front: '',
  register: 'register/',
  registerYear: (source: string, year: string) => `register/${source}/${year}/`,
  shipments: 'shipments/',
  shipmentYear: (source: string, year: string) => `shipments/${source}/${year}/`,
  certificate: (lot: string) => `lots/${lot}/`,
  revision: (lot: string, number: number) => `lots/${lot}/revision/${number}/`,
  working: (lot: string) => `lots/${lot}/working/`,
  sources: 'sources/',
  source: (id: string) => `sources/${id}/`,
  whatIf: (source: string) => `sources/${source}/what-if/`,
  sourceFeed: (source: string) => `sources/${source}/feed.xml`,
  sourceReport: (source: string, year: string | null) =>
    `sources/${source}/report/${year === null ? '' : `${year}/`}`,
  sourceAgency: (id: string) => `sources/${id}/agency/`,
  sourceByLot: (id: string) => `sources/${id}/by-lot/`,
  sourceByShipment: (id: string) => `sources/${id}/by-shipment/`,
  sourceUnder: (id: string, criterion: string, year: string | null = null) =>
    `sources/${id}/${criterion}/${year === null ? '' : `${year}/`}`,
  criteria: 'criteria/',
  criterion: (id: string) => `criteria/${id}/`,
  comparison: 'comparison/',
  routes: 'routes/',
  limits: 'limits/',
  limitsOf: (property: string) => `limits/${property}/`,
  laboratories: 'laboratories/',
  laboratory: (id: string) => `laboratories/${id}/`,
  conditions: 'conditions/',
  condition: (id: string) => `conditions/#${id}`,
  studies: 'studies/',
  ownLots: 'own-lots/',
  study: (id: string) => `studies/${id}/`,
  studySheets: (id: string) => `studies/${id}/bench-sheets/`,
  studyCalendar: (id: string) => `studies/${id}/calendar/`,
  studyCalendarFile: (id: string) => `studies/${id}/calendar.ics`,
  studyTable: (id: string) => `data/studies/${id}.csv`,
  studyData: (id: string) => `data/studies/${id}.json`,
  methods: 'methods/',
  method: (id: string) => `methods/${id}/`,
  diagnostics: 'diagnostics/',
  findings: 'findings/',
  findingYear: (source: string, year: string) => `findings/${source}/${year}/`,
  due: 'due/',
  lookUp: 'look-up/',
  bench: 'bench/',
  benchWith: (lot: string) => `bench/?lot=${lot}`,
  indexData: 'data/index.json',
  shipmentData: 'data/shipments.json',
  conditionData: 'data/conditions.json',
  controlData: 'data/controls.json',
  criterionData: 'data/criteria.json',
  benchData: 'data/bench.json',
  sourceEvidence: (id: string) => `data/evidence/${id}.json`,
  lotData: (lot: string) => `data/lots/${lot}.json`,
  lotsTable: 'data/lots.csv',
  resultsTable: 'data/results.csv',
  shipmentsTable: 'data/shipments.csv',
  /** A file of a table for query engines, in folders named by its keys; rows that have none stand under HIVE_NULL. */
  tablePart: (table: string, keys: readonly string[], values: readonly (string | null)[]) =>
    `${TABLES}/${table}/${keys.map((key, place) => `${key}=${values[place] ?? HIVE_NULL}/`).join('')}part.parquet`,
  tables: `${TABLES}/`,
  dataPackage: 'data/datapackage.json',
  queries: 'data/queries/',
  query: (id: string) => `data/queries/${id}.sql`,
  dueCalendar: 'data/due.ics',
  schema: (kind: string) => `schemas/${kind}.json`,
  feed: 'feed.xml',
} as const

const PAGE = 'index.html'

/** The file of the page at an address, "" for the front page. */
export function pageFile(address: string): string {
  return `${address}${PAGE}`
}

/** Addresses of the pages among files; what a server gives for an address that is none is not a page. */
export function pagesAmong(files: readonly string[]): string[] {
  return files
    .filter((path) => path === PAGE || path.endsWith(`/${PAGE}`))
    .map((path) => path.slice(0, -PAGE.length))
}

/** What a link needs of the edition. */
export type Addressed = Pick<Edition, 'address'>

/** The link to a path from any page: base path in front. */
export function link(edition: Addressed, path: string): string {
  return `${edition.address.base}${path}`
}

/** The full address for a QR code or feed; null where the site has no address yet. */
export function fullAddress(edition: Addressed, path: string): string | null {
  return edition.address.origin === null ? null : `${edition.address.origin}${edition.address.base}${path}`
}
