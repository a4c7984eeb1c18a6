/** YAML text to plain values, by the plain parser: positions are sought only for a file that has a fault. */
import { JSON_SCHEMA, load, YAMLException } from 'js-yaml'

/** Nesting beyond any record's. */
const DEEPEST = 30

export type ParsedYaml = { readonly value: unknown } | { readonly fault: YamlFault }
export interface YamlFault {
  readonly code: 'yaml-syntax' | 'yaml-alias' | 'yaml-duplicate-key' | 'yaml-empty'
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
    const [line, column] = [(mark?.line ?? 0) + 1, (mark?.column ?? 0) + 1]
    return { fault: { code: codeOf(reason), message: reason, line, column } }
  }
}

function codeOf(message: string): YamlFault['code'] {
  if (/alias/i.test(message)) return 'yaml-alias'
  if (/input is empty/.test(message)) return 'yaml-empty'
  return /duplicat/i.test(message) ? 'yaml-duplicate-key' : 'yaml-syntax'
}
