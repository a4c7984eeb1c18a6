/**
 * data/bench.json: what the bench page must know of the site, its laboratories and its sources to read and judge a lot,
 * beside the conditions, controls, sets and evidence that have files of their own.
 */
import { writtenForm } from '../../records/schema/written.ts'
import { defined } from '../../core/measure/defined.ts'
import type { Edition } from '../shape/edition.ts'
import { shippedSets } from '../shape/shipped-sets.ts'
import { setsData } from './criterion-data.ts'
import { partOfSource } from '../shape/part-of-source.ts'

/** Only what reading and judging ask for: whatever else a record says is on no page by this file. */
export function benchData(
  edition: Pick<
    Edition,
    | 'asOf'
    | 'site'
    | 'statedAsOf'
    | 'laboratories'
    | 'sources'
    | 'source'
    | 'ofSource'
    | 'shipped'
    | 'criteria'
    | 'conditions'
  >,
): object {
  const { title, units, criteria, requested, grace, offset } = edition.site
  return {
    format: 1,
    asOf: edition.asOf,
    site: writtenForm(
      defined({
        ...{ title, units, criteria, requested, grace, offset },
        'read-within': edition.site['read-within'],
        'as-of': edition.statedAsOf,
      }),
    ),
    laboratories: Object.fromEntries(
      [...edition.laboratories].map(([id, { name, methods, moulds }]) => [
        id,
        writtenForm(defined({ name, methods, moulds })),
      ]),
    ),
    sources: Object.fromEntries(
      [...edition.sources.keys()].map((id) => [id, JSON.parse(sourceText(edition, id)) as unknown]),
    ),
    ...shippedData(shippedSets(edition)),
  }
}

/** In the form of data/criteria.json and data/conditions.json. */
function shippedData({ criteria, conditions }: ReturnType<typeof shippedSets>): object {
  if (criteria.size === 0) return {}
  const written = [...conditions].map(([id, condition]) => [id, writtenForm(condition)])
  return { shipped: { criteria: setsData(criteria), conditions: Object.fromEntries(written) } }
}

/** As text, which nothing has to make plain. */
const sourceText = partOfSource('bench', (edition: Pick<Edition, 'source' | 'ofSource'>, id): string =>
  JSON.stringify(sourceData(edition, id)),
)

function sourceData(edition: Pick<Edition, 'source'>, id: string): unknown {
  const { record } = edition.source(id)
  return writtenForm(
    defined({
      ...{ name: record.name, producer: record.producer, kind: record.kind, class: record.class },
      'class-under': record['class-under'],
      'lot-number-pattern': record['lot-number-pattern'],
      criteria: record.criteria,
    }),
  )
}
