/** Which pages stand for all of them. */
import type { Edition } from '../../src/edition/shape/edition.ts'

/** One page of each kind, by path. */
export function kindsOfPage(edition: Edition): string[] {
  const lots = [...edition.lots.values()]
  const byState = ['provisional', 'complete', 'withdrawn']
    .map((state) => lots.find((lot) => lot.state === state)?.id)
    .filter((id) => id !== undefined)
  const revised = lots.find((lot) => lot.earlier.length > 0)
  const [source, entry] = [...edition.sources][0] ?? []
  const firstLot = lots[0]
  return [
    '',
    'register/',
    'shipments/',
    'sources/',
    'criteria/',
    'laboratories/',
    'conditions/',
    'methods/',
    'findings/',
    'look-up/',
    '404.html',
    ...byState.map((id) => `lots/${id}/`),
    `lots/${revised?.id}/revision/0/`,
    `sources/${source}/`,
    `sources/${source}/by-lot/`,
    `sources/${source}/by-shipment/`,
    `sources/${source}/${entry?.criteria[0]}/`,
    `register/${firstLot?.source}/${firstLot?.sampled.text.slice(0, 4)}/`,
    ...['c618-12a', 'high-fell-viaduct', 'en450-1-2012'].map((id) => `criteria/${id}/`),
    'comparison/',
    'limits/',
    'limits/strength-activity-index/',
    'routes/',
    ...[...edition.laboratories.keys()].slice(0, 1).map((id) => `laboratories/${id}/`),
    ...edition.methods.slice(0, 1).map((method) => `methods/${method.id}/`),
  ]
}
