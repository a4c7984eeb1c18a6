/** A fault of YAML's syntax in plain words: the slip that most likely caused it, where it can be told, else what the parser says. */
import type { PlaceHere } from '../diagnostics/report.ts'
import type { YamlFault } from './parse-yaml.ts'

export interface SyntaxFault {
  /** From 1. */
  readonly line: number
  readonly column: number
  readonly message: string
  readonly mend: string
}

/** @param fault as the parser gives it, which is often a line after its cause */
export function syntaxFault({ line, column, message }: YamlFault, text: string): SyntaxFault {
  const lines = text.split('\n')
  return (
    tab(lines, line) ??
    noBlank(lines, line) ??
    (/bad indentation of a mapping entry/.test(message) ? secondKey(lines, line) : undefined) ??
    (/deficient indentation|unexpected end/.test(message) ? unclosed(lines, line) : undefined) ?? {
      ...{ line, column, message: `this is not YAML: ${message}` },
      mend: 'check indentation, colons, quotes and brackets here and on the line above',
    }
  )
}

function tab(lines: readonly string[], line: number): SyntaxFault | undefined {
  const source = lines[line - 1] ?? ''
  return /^[ -]*\t/.test(source)
    ? {
        ...{ line, column: source.indexOf('\t') + 1 },
        message: 'a tab indents this line, and YAML takes only spaces there',
        mend: 'write spaces in its place, two for each level as a rule',
      }
    : undefined
}

/** "sample:C" and "-sample: C" are words like any other to YAML, which finds out on the next line. */
function noBlank(lines: readonly string[], line: number): SyntaxFault | undefined {
  for (const own of [line, line - 1]) {
    const source = lines[own - 1] ?? ''
    const colon = /^[\s-]*[A-Za-z][\w-]*:(?=[^\s/])/.exec(source)
    if (colon !== null)
      return {
        ...{ line: own, column: colon[0].length },
        message: 'a blank is missing after this colon, so that YAML sees no key',
        mend: 'write a blank between the colon and the value',
      }
    const dash = /^\s*-(?=[A-Za-z{[])/.exec(source)
    if (dash !== null)
      return {
        ...{ line: own, column: dash[0].length },
        message: 'a blank is missing after this dash, so that YAML sees no list',
        mend: 'write a blank between the dash and the item',
      }
  }
  return undefined
}

/** "age: 7 d within: 3 h": a colon and a blank make a second key of what may as well be text. */
function secondKey(lines: readonly string[], line: number): SyntaxFault | undefined {
  const before = /^[\s-]*[\w-]+: +[^\s"'{[].*?(?=[\w-]+:\s)/.exec(lines[line - 1] ?? '')?.[0]
  return before === undefined
    ? undefined
    : {
        ...{ line, column: before.length + 1 },
        message: 'a second key stands on this line, or a text holds a colon and a blank',
        mend: 'write each key on a line of its own, or put the text in quotes',
      }
}

/** Where a key that stands at a line and column stood before, in the same column of a line above or earlier on its own line. */
export function firstOfKey(text: string, line: number, column: number): PlaceHere[] {
  const lines = text.split('\n')
  const source = lines[line - 1] ?? ''
  const key = /^[^\s:,{}]+:/.exec(source.slice(column - 1))?.[0]
  if (key === undefined) return []
  const place = (own: number, at: number): PlaceHere[] => [
    { line: own, column: at + 1, endColumn: at + key.length, message: 'the first of the two' },
  ]
  const earlier = source.slice(0, column - 1).search(new RegExp(`(?<=[{,\\s])${escaped(key)}`))
  if (0 <= earlier) return place(line, earlier)
  for (let own = line - 1; 0 < own; own--)
    if ((lines[own - 1] ?? '').startsWith(key, column - 1)) return place(own, column - 1)
  return []
}

function escaped(text: string): string {
  return text.replaceAll(/[$()*+.?[\\\]^{|}]/g, String.raw`\$&`)
}

const CLOSING: Readonly<Record<string, string>> = { '{': '}', '[': ']' }

/** A line with its remark taken off and its texts in single quotes blanked, so that signs keep their columns. */
function withoutRemark(source: string): string {
  return source.replace(/(?<=[\s,:[{])'[^']*'/g, (text) => ' '.repeat(text.length)).replace(/(^|\s)#.*$/, '')
}

/** The bracket or the quote that is still open before a line. */
function unclosed(lines: readonly string[], line: number): SyntaxFault | undefined {
  const open: { sign: string; line: number; column: number }[] = []
  lines.slice(0, line - 1).forEach((source, index) => {
    for (const { 0: sign, index: at } of withoutRemark(source).matchAll(/[{}[\]"]/g)) {
      const last = open.at(-1)
      const closes = sign === '"' ? last?.sign === '"' : CLOSING[last?.sign ?? ''] === sign
      if (closes) open.pop()
      else if (last?.sign !== '"' && sign !== '}' && sign !== ']')
        open.push({ sign, line: index + 1, column: at + 1 })
    }
  })
  const innermost = open.at(-1)
  return innermost === undefined
    ? undefined
    : {
        ...{ line: innermost.line, column: innermost.column },
        message:
          innermost.sign === '"'
            ? 'the quote that opens here is not closed'
            : `the ${innermost.sign} that opens here is not closed`,
        mend: `write ${innermost.sign === '"' ? 'the closing quote' : CLOSING[innermost.sign]} where it ends`,
      }
}
