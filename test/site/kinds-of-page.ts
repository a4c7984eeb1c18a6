/** Which pages stand for all of them. */
import type { Edition } from '../../src/edition/shape/edition.ts'
import { paths } from '../../src/edition/shape/addresses.ts'
import { plannedStudies } from '../../src/edition/views/studies/planned-studies.ts'
import { shipmentYears } from '../../src/edition/views/shipments.ts'
import { whatIfSources } from '../../src/edition/views/what-if.ts'
import { allShipments } from '../edition/all-shipments.ts'

/** One page of each kind, by path; several of a kind whose states look different. */
export function kindsOfPage(edition: Edition): string[] {
  const lots = [...edition.lots.values()]
  const states = ['provisional', 'complete', 'withdrawn'].map((state) =>
    lots.find((lot) => lot.state === state),
  )
  const revised = lots.find((lot) => lot.earlier.length > 0)
  const [[source, entry] = ['', undefined]] = [...edition.sources]
  const [first] = edition.lotsOf(source)
  return [
    paths.front,
    paths.register,
    paths.shipments,
    paths.sources,
    paths.criteria,
    paths.laboratories,
    paths.conditions,
    paths.methods,
    paths.diagnostics,
    paths.queries,
    paths.findings,
    paths.due,
    paths.lookUp,
    paths.bench,
    paths.comparison,
    paths.limits,
    paths.routes,
    '404.html',
    ...states.flatMap((lot) => (lot === undefined ? [] : [paths.certificate(lot.id)])),
    ...(revised === undefined ? [] : [paths.revision(revised.id, 0), paths.working(revised.id)]),
    paths.source(source),
    paths.sourceByLot(source),
    paths.sourceByShipment(source),
    paths.sourceUnder(source, entry?.criteria[0] ?? ''),
    paths.sourceAgency(source),
    paths.sourceReport(source, null),
    ...whatIfSources(edition).slice(0, 1).map(paths.whatIf),
    paths.registerYear(source, first?.sampled.text.slice(0, 4) ?? ''),
    ...shipmentYears(edition)
      .slice(0, 1)
      .map((own) => paths.shipmentYear(own.source, own.year)),
    ...['c618-12a', 'high-fell-viaduct', 'en450-1-2012'].map(paths.criterion),
    paths.limitsOf('strength-activity-index'),
    ...[...edition.laboratories.keys()].slice(0, 1).map(paths.laboratory),
    paths.studies,
    paths.ownLots,
    ...[...edition.studies.keys()].map(paths.study),
    ...plannedStudies(edition)
      .slice(0, 1)
      .flatMap((id) => [paths.studySheets(id), paths.studyCalendar(id)]),
    ...edition.methods.slice(0, 1).map((method) => paths.method(method.id)),
  ]
}

/** The same page may look different once its scripts have filled it: one address of each such page. */
export function filledPages(edition: Edition): string[] {
  const judgedTwice = [...edition.sources.values()].find(({ criteria }) => criteria.length > 1)
  if (judgedTwice === undefined) throw new RangeError('the demo needs a source that is judged under two sets')
  const { id: source, criteria } = judgedTwice
  const [set, other] = criteria
  const [lot] = edition.lotsOf(source)
  return [
    paths.benchWith(lot?.id ?? ''),
    `${paths.lookUp}?q=${allShipments(edition)[0]?.bill}`,
    `${paths.comparison}?set=${set}&set=${other}&source=${source}`,
    `${paths.register}?source=${source}&outcome=does-not-meet`,
    `${paths.certificate(lot?.id ?? '')}?under=${other}`,
    `${paths.source(source)}?under=${other}`,
  ]
}
