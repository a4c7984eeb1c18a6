/** An Edition that notes what is read of it: members by their names, rows of maps and parts that are given whole by their ids. */
import type { Edition } from './edition.ts'
import { noteRead, withoutTrace } from './trace.ts'

/** Members that are read whole. */
const PLAIN = ['asOf', 'site', 'statedAsOf', 'address', 'audience', 'methods', 'program', 'shipped'] as const

/** Members of which a row may be read. */
export const MAPS = [
  'producers',
  'laboratories',
  'conditions',
  'announcedConditions',
  'controls',
  'criteria',
  'sources',
  'lots',
  'studies',
] as const

export type PlainMember = (typeof PLAIN)[number]
export type MapMember = (typeof MAPS)[number]

export function tracedEdition(edition: Edition): Edition {
  const traced: Record<string, unknown> = {
    lotsOf: noting(edition.lotsOf, (source) => `lotsOf/${source}`),
    shipmentsOf: noting(edition.shipmentsOf, (source) => `shipmentsOf/${source}`),
    scatterFor: noting(edition.scatterFor, (source) => `scatterFor/${source}`),
    lot: noting(edition.lot, (id) => `lot ${id}`),
    source: noting(edition.source, (id) => `source ${id}`),
    study: noting(edition.study, (id) => `study ${id}`),
    laboratoryHistory: noting(edition.laboratoryHistory, ofLaboratory),
    laboratoryFindings: noting(edition.laboratoryFindings, ofLaboratory),
    laboratoryChecks: noting(edition.laboratoryChecks, ofLaboratory),
    restsOn: noting(edition.restsOn, (part) => part),
    // What is kept of a source rests on the source, whether it is made now or was before.
    ofSource: (source, name, make, beside) => {
      noteRead(`source ${source}`)
      // Parts hold links.
      noteRead('address')
      const also = beside?.() ?? ''
      return withoutTrace(() => edition.ofSource(source, name, make, () => also))
    },
  } satisfies Omit<Edition, PlainMember | MapMember>
  for (const name of MAPS) traced[name] = new TracedMap<unknown>(name, edition[name])
  for (const name of PLAIN)
    Object.defineProperty(traced, name, {
      enumerable: true,
      get: () => {
        noteRead(name)
        return edition[name]
      },
    })
  return traced as unknown as Edition
}

function ofLaboratory(id: string): string {
  return `laboratory ${id}`
}

function noting<Id extends string, Value>(
  read: (id: Id) => Value,
  nameOf: (id: Id) => string,
): (id: Id) => Value {
  return (id) => {
    noteRead(nameOf(id))
    return read(id)
  }
}

/** Notes a row as "MAP/ID", whether there is one as "MAP?ID", ids and order of all rows as "MAP#", and all rows as "MAP". */
class TracedMap<Row> implements ReadonlyMap<string, Row> {
  readonly #name: MapMember
  readonly #rows: ReadonlyMap<string, Row>

  constructor(name: MapMember, rows: ReadonlyMap<string, Row>) {
    this.#name = name
    this.#rows = rows
  }

  get size(): number {
    noteRead(`${this.#name}#`)
    return this.#rows.size
  }

  has(id: string): boolean {
    noteRead(`${this.#name}?${id}`)
    return this.#rows.has(id)
  }

  get(id: string): Row | undefined {
    noteRead(`${this.#name}/${id}`)
    return this.#rows.get(id)
  }

  keys(): MapIterator<string> {
    noteRead(`${this.#name}#`)
    return this.#rows.keys()
  }

  values(): MapIterator<Row> {
    return this.#whole().values()
  }

  entries(): MapIterator<[string, Row]> {
    return this.#whole().entries()
  }

  forEach(each: (row: Row, id: string, rows: ReadonlyMap<string, Row>) => void): void {
    for (const [id, row] of this.#whole()) each(row, id, this)
  }

  [Symbol.iterator](): MapIterator<[string, Row]> {
    return this.entries()
  }

  #whole(): ReadonlyMap<string, Row> {
    noteRead(this.#name)
    return this.#rows
  }
}
