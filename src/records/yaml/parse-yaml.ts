/** YAML text to plain values, by the plain parser: positions are sought only for a file that has a fault. */
import { JSON_SCHEMA, load, YAMLException } from 'js-yaml'
import { lineAndColumn, lineStarts } from './line-and-column.ts'

/** Nesting beyond any record's. */
const DEEPEST = 30

export type ParsedYaml = { readonly value: unknown } | { readonly fault: YamlFault }
export interface YamlFault {
  readonly code: 'yaml-syntax' | 'yaml-alias' | 'yaml-duplicate-key' | 'yaml-empty'
  /** What the parser says. */
  readonly message: string
  /** From 1. */
  readonly line: number
  readonly column: number
}

/** Numbers, true, false and null are read as such, everything else stays text; aliases are refused. */
export function parseYaml(text: string): ParsedYaml {
  try {
    return { value: load(text, { schema: JSON_SCHEMA, maxAliases: 0, maxDepth: DEEPEST }) }
  } catch (error) {
    if (!(error instanceof YAMLException)) throw error
    const { reason, mark } = error
    // YAML also begins a line after a carriage return alone, where neither editors nor our other diagnostics do.
    const { line, column } = lineAndColumn(lineStarts(text), mark?.position ?? secondDocument(text))
    return { fault: { code: codeOf(reason), message: reason, line, column } }
  }
}

/**
 * Offset of the second document of a text with several, for which the parser gives no place; 0 where none is found.
 */
function secondDocument(text: string): number {
  let begun = false
  for (const { 0: line, index } of text.matchAll(/^.*$/gm)) {
    const isMark = /^\ufeff?(?:---|\.\.\.)(?:\s|$)/.test(line)
    if (begun && isMark) return index
    begun ||= isMark ? /^\ufeff?---\s+[^\s#]/.test(line) : /^\ufeff?[ \t]*[^\s#%]/.test(line)
  }
  return 0
}

function codeOf(message: string): YamlFault['code'] {
  if (/alias/i.test(message)) return 'yaml-alias'
  if (/input is empty/.test(message)) return 'yaml-empty'
  return /duplicat/i.test(message) ? 'yaml-duplicate-key' : 'yaml-syntax'
}
