/** Limits that a schema sets to a number, a text, a list or a mapping, in words. */
import { countWords } from '../../words/numbers.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { below } from '../yaml/pointer.ts'
import { description, shortened, valueWords } from './schema-words.ts'
import type { ErrorObject } from './schemas.ts'

/** What is wrong and how to fix it; the fix ends with what the schema says of the value. */
interface Fault {
  readonly message: string
  readonly mend: string
}

/** Reports a value beyond one of these limits. @returns whether the keyword is one of them */
export function reportLimit(error: ErrorObject, report: FileReport): boolean {
  if (error.keyword === 'minLength' && error.data === '') {
    report.at(
      error.instancePath,
      'yaml-empty',
      'there is no text',
      description(error) || 'write text, or remove the line',
    )
    return true
  }
  const fault = FAULTS[error.keyword]?.(error)
  if (fault === undefined) return false
  const expected = description(error)
  const mend = expected === '' ? fault.mend : `${fault.mend}; ${expected}`
  report.at(pointerOf(error), 'schema', fault.message, mend)
  return true
}

type Limited = ErrorObject & { readonly params: { readonly limit?: number; readonly comparison?: string } }

const FAULTS: Readonly<Record<string, (error: Limited) => Fault>> = {
  minimum: numberFault,
  maximum: numberFault,
  exclusiveMinimum: numberFault,
  exclusiveMaximum: numberFault,
  minLength: textFault,
  maxLength: textFault,
  minItems: (error) => sizeFault(error, 'list', 'item'),
  maxItems: (error) => sizeFault(error, 'list', 'item'),
  minProperties: (error) => sizeFault(error, 'mapping', 'entry'),
  maxProperties: (error) => sizeFault(error, 'mapping', 'entry'),
  uniqueItems: ({ data, params }) => {
    const { i, j } = params as unknown as { readonly i: number; readonly j: number }
    return {
      message: `item ${Math.max(i, j) + 1} of the list repeats item ${Math.min(i, j) + 1}, ${valueWords((data as unknown[])[i])}`,
      mend: 'list each once',
    }
  },
}

/** A repeated item is marked itself, not its whole list. */
function pointerOf({ instancePath, keyword, params }: ErrorObject): string {
  const { i, j } = params as { readonly i: number; readonly j: number }
  return keyword === 'uniqueItems' ? below(instancePath, Math.max(i, j)) : instancePath
}

const COMPARED: Readonly<Record<string, string>> = {
  '>=': 'of at least',
  '<=': 'of at most',
  '>': 'above',
  '<': 'below',
}

function numberFault({ data, params: { limit = 0, comparison = '' } }: Limited): Fault {
  const allowed = `a number ${COMPARED[comparison] ?? ''} ${limit}`
  return { message: `found ${String(data)}; ${allowed} was expected`, mend: `write ${allowed}` }
}

function textFault({ keyword, data, params: { limit = 0 } }: Limited): Fault {
  const text = String(data)
  const length = countWords([...text].length, 'character')
  return keyword === 'maxLength'
    ? {
        message: `the text "${shortened(text)}" has ${length}; at most ${limit} are allowed`,
        mend: `shorten it to ${countWords(limit, 'character')}`,
      }
    : {
        message: `the text "${text}" has ${length}; at least ${limit} were expected`,
        mend: 'write it in full',
      }
}

function sizeFault(
  { keyword, data, params: { limit = 0 } }: Limited,
  what: 'list' | 'mapping',
  member: 'item' | 'entry',
): Fault {
  const size = Object.keys(data as object).length
  const found = size === 0 ? `the ${what} is empty` : `the ${what} has ${countOf(size, member)}`
  return keyword.startsWith('max')
    ? {
        message: `${found}; at most ${limit} ${limit === 1 ? 'is' : 'are'} allowed`,
        mend: `leave ${size - limit} out`,
      }
    : {
        message: `${found}; at least ${countOf(limit, member)} ${limit === 1 ? 'was' : 'were'} expected`,
        mend: size === 0 ? `add one, or remove the whole ${what}` : `add ${limit - size}`,
      }
}

function countOf(count: number, member: 'item' | 'entry'): string {
  return member === 'item' || count === 1 ? countWords(count, member) : `${count} entries`
}
