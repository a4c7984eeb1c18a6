/** What the names in a trace stand for: of each one digest, the same only where what was read is the same. */
import { kept } from '../../core/measure/kept.ts'
import { digestOf } from '../../records/issued/digest.ts'
import type { Edition, EditionPart } from './edition.ts'
import { partOfSource } from './part-of-source.ts'
import { plainText, withMembers } from './plain-text.ts'
import { ASKED, answerTo, MADE, type Trace, withoutTrace } from './trace.ts'
import { MAPS, type MapMember, type PlainMember } from './traced-edition.ts'

/** @returns null for what nothing tells of: it must be taken for another one */
export type DependencyDigests = (dependency: string) => string | null

/**
 * @param edition the one that is read; nothing is noted of what is read here
 * @param before digests of an earlier edition, most of which are the same: each text is held once
 */
export function dependencyDigests(
  edition: Edition,
  before: ReadonlyMap<string, string> = new Map(),
): DependencyDigests {
  const known = new Map<string, string | null>()
  const digestAt: DependencyDigests = (dependency) => {
    const own = known.get(dependency)
    if (own !== undefined) return own
    const [digest, earlier] = [
      withoutTrace(() => digestOfRead(edition, dependency, digestAt)),
      before.get(dependency),
    ]
    const held = digest === earlier ? earlier : digest
    known.set(dependency, held)
    return held
  }
  return digestAt
}

/**
 * The same, and of what was made for several the digest of all its parts.
 * @param parts by name; what has none there is another one
 */
export function withParts(digestAt: DependencyDigests, parts: ReadonlyMap<string, Trace>): DependencyDigests {
  const known = new Map<string, { readonly digest: string | null }>()
  const ofAll: DependencyDigests = (dependency) => {
    if (!dependency.startsWith(MADE)) return digestAt(dependency)
    const own = parts.get(dependency)
    return kept(known, dependency, () => ({ digest: own === undefined ? null : together(own) })).digest
  }
  const together = (own: Trace) => {
    const digests = [...own].map((part) => [part, ofAll(part)])
    return digests.some(([, digest]) => digest === null) ? null : digestOf(JSON.stringify(digests))
  }
  return ofAll
}

function digestOfRead(edition: Edition, dependency: string, digestAt: DependencyDigests): string | null {
  if (/^(?:lot|source|laboratory|study|control) /.test(dependency))
    return edition.restsOn(dependency as EditionPart)
  if (dependency.startsWith(ASKED)) {
    const answered = answerTo(edition, dependency)
    return answered === undefined ? null : digestOf(wholeText(answered.answer))
  }
  const [, name = '', rest = ''] = /^(\w+)(.*)$/.exec(dependency) ?? []
  if (name === 'lotsOf')
    return digestOf(
      edition
        .lotsOf(rest.slice(1))
        .map(({ id }) => digestAt(`lots/${id}`))
        .join(),
    )
  if (name === 'shipmentsOf') return shipmentsDigest(edition, rest.slice(1))
  if (name === 'scatterFor') return digestOf(wholeText(edition.scatterFor(rest.slice(1))))
  if (!isMap(name)) return digestOf(wholeText(edition[name as PlainMember]))
  const rows: ReadonlyMap<string, unknown> = edition[name]
  if (rest === '#') return digestOf(JSON.stringify([...rows.keys()]))
  if (rest.startsWith('?')) return String(rows.has(rest.slice(1)))
  const id = rest.slice(1)
  // What a batch is made of is shorter than its results with their workings.
  if (name === 'controls' && rows.has(id)) return edition.restsOn(`control ${id}`)
  if (rest !== '') return digestOf(wholeText(rows.get(id)))
  const own = [...rows.keys()].map((row) => [row, digestAt(`${name}/${row}`)] as const)
  return own.some(([, digest]) => digest === null)
    ? null
    : digestOf(own.map((digest) => digest.join(' ')).join())
}

/** Kept, so that the shipments of a source that is as it was need not be read for it. */
const shipmentsDigest = partOfSource('digest of shipments', (edition: Edition, source) =>
  digestOf(wholeText(edition.shipmentsOf(source))),
)

function isMap(name: string): name is MapMember {
  return (MAPS as readonly string[]).includes(name)
}

/**
 * A text that is the same only for the same value, maps and workings included.
 * @throws RangeError for a value with any other function
 */
export function wholeText(value: unknown): string {
  return plainText(withoutFunctions(value ?? null))
}

/**
 * The same with the steps of workings in place of what makes them, and maps as lists of their entries.
 * @throws RangeError for any other function, of which no digest can be made
 */
function withoutFunctions(value: unknown): unknown {
  if (typeof value === 'function')
    throw new RangeError(`withoutFunctions needs plain values, got ${value.name}()`)
  if (typeof value !== 'object' || value === null || 'toJSON' in value) return value
  if (value instanceof Map) return [...value].map(withoutFunctions)
  if (Array.isArray(value)) return value.map(element)
  return withMembers(value, (member, key) =>
    withoutFunctions(key === 'working' && typeof member === 'function' ? member() : member),
  )
}

/** Digests of members of lists, which many answers share; no value of an edition changes. */
const elements = new WeakMap<object, { readonly digest: string }>()

function element(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || 'toJSON' in value) return withoutFunctions(value)
  return kept(elements, value, () => ({ digest: digestOf(plainText(withoutFunctions(value))) })).digest
}
