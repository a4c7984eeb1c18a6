/** Where the limits of a set were read, said once for each specification and by document, never by code. */
import { type Clause, type Criterion, everyClause, layerOf } from '../core/criteria/criterion.ts'

/** Codes of documents in a text: "S1", "S63". */
const CODE = /\bS\d+\b/g

/** What a clause says of its own origin; null where the whole layer says it, or nothing is on record. */
export function originWords({ basis, layer }: Clause, criterion: Criterion): string | null {
  if (basis === undefined) return null
  if ('memory' in basis)
    return `from memory, to be confirmed: ${withDocuments(basis.memory, layer, criterion)}`
  return basis.read === mainSource(layer, criterion)
    ? null
    : `read in ${withDocuments(basis.read, layer, criterion)}`
}

/** "ASTM C618-12a, abstract with tables": where the limits of a layer were read that say nothing else. */
export function mainSourceWords(layer: string, criterion: Criterion): string | null {
  const main = mainSource(layer, criterion)
  return main === null ? null : withDocuments(main, layer, criterion)
}

/** The documents of a layer in the order of its list. */
export function documentsOf(layer: string, criterion: Criterion): string[] {
  const sources = layerOf(criterion, layer)?.sources ?? {}
  return Object.values(sources).map((title) => withNames(title, sources))
}

/** What most of a layer's clauses were read in; of several the first. */
function mainSource(layer: string, criterion: Criterion): string | null {
  const counts = new Map<string, number>()
  for (const { basis, layer: own } of everyClause(criterion.clauses))
    if (own === layer && basis !== undefined && 'read' in basis)
      counts.set(basis.read, (counts.get(basis.read) ?? 0) + 1)
  const most = Math.max(...counts.values())
  return [...counts].find(([, count]) => count === most)?.[0] ?? null
}

function withDocuments(text: string, layer: string, criterion: Criterion): string {
  return withNames(text, layerOf(criterion, layer)?.sources ?? {})
}

function withoutItself(
  code: string,
  sources: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(sources).filter(([other]) => other !== code))
}

/** Each code by the name of its document: alone in full, within a text without what it is an extract of. */
function withNames(text: string, sources: Readonly<Record<string, string>>): string {
  if (sources[text] !== undefined) return withNames(sources[text], withoutItself(text, sources))
  return text.replace(CODE, (code) => sources[code]?.split(/[,;]/)[0] ?? code)
}
