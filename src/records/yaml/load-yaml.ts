/** One file's YAML to a loaded record: syntax, schema, quantities. */
import { withoutBlanks } from '../schema/blanks.ts'
import { converterOf, type ReportQuantity } from '../schema/convert.ts'
import { reportForbiddenKeys } from './forbidden-keys.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { reportNewerFormat } from '../schema/format.ts'
import { reportQuantity } from '../schema/quantity-faults.ts'
import { reportSchemaErrors } from '../schema/schema-faults.ts'
import { type RecordKind, validatorOf } from '../schema/schemas.ts'
import { reportConflicts } from './conflict-markers.ts'
import { parseYaml, type YamlFault } from './parse-yaml.ts'
import { reportStrangeBlanks } from './strange-blanks.ts'
import { placeholdersIn } from './placeholders.ts'
import { lastKey } from './pointer.ts'
import { lineAndColumn, lineStarts } from './line-and-column.ts'
import { firstOfKey, syntaxFault } from './syntax-words.ts'
import { reportRawControl, reportUnseen } from './unseen-characters.ts'

/**
 * The loaded record; undefined where anything in it is at fault, or nothing has been written into it yet.
 * @param sortedAt minutes ahead of UTC that sorting takes where a moment states no offset
 */
export function loadYaml(kind: RecordKind, text: string, report: FileReport, sortedAt = 0): unknown {
  if (reportConflicts(text, report)) return undefined
  const yaml = parseYaml(text)
  if ('fault' in yaml) {
    if (!reportStrangeBlanks(text, report)) reportYaml(yaml.fault, text, report)
    return undefined
  }
  if (kind === 'site' && reportNewerFormat(yaml.value, report)) return undefined
  const { value, blanks, items } = withoutBlanks(kind, yaml.value)
  if (value === undefined) {
    reportNotBegun(blanks, report)
    return undefined
  }
  reportBlanks(blanks, report)
  if (items.length > 0) report.leaveOut(items)
  const validate = validatorOf(kind)
  const valid = validate(value)
  // Whatever else the schema says follows from such a blank.
  if (!valid && reportStrangeBlanks(text, report)) return undefined
  const before = report.count()
  if (!valid) reportSchemaErrors(validate.errors ?? [], report)
  reportForbiddenKeys(value, text, report)
  reportUnseen(value, report)
  reportPlaceholders(value, report)
  if (typeof value !== 'object' || value === null) return undefined
  const record = convert(kind, value, report, sortedAt)
  // A record that is left out must never be left out silently, whatever the schemas come to ask for.
  if (!valid && report.count() === before)
    report.at(
      '',
      'schema',
      'the record does not match its schema',
      'compare it with the schema of this kind of record',
    )
  return valid && report.count() === before ? record : undefined
}

/** Blanks named at most. */
const NAMED = 4

/** What counts as not known is told once a record, at the first of them. */
function reportBlanks(blanks: readonly string[], report: FileReport): void {
  const [first] = blanks
  if (first === undefined) return
  report.warnAt(
    first,
    'value-blank',
    `still blank, so not yet known: ${someOf(blanks.map(lastKey))}`,
    'write each value after its colon, with its unit, or take the line out',
  )
}

function reportNotBegun(blanks: readonly string[], report: FileReport): void {
  report.warnAt(
    blanks[0] ?? '',
    'value-blank',
    'nothing has been written into this record yet, so it is left out',
    'write each value after its colon, with its unit, or remove the file',
  )
}

/** Texts that a new record was laid out with, told once a record, at the first of them. */
function reportPlaceholders(value: unknown, report: FileReport): void {
  const all = placeholdersIn(value)
  const [first] = all
  if (first === undefined) return
  report.warnAt(
    first.pointer,
    'placeholder',
    `still to be replaced: ${someOf(all.map(({ text }) => text))}`,
    'write your own text in place of each; no certificate is issued with one of them, nor is a public site with certificates built',
  )
}

function someOf(all: readonly string[]): string {
  const texts = [...new Set(all)]
  const named = texts.slice(0, NAMED).join(', ')
  return texts.length <= NAMED ? named : `${named} and ${texts.length - NAMED} more`
}

const converters = new Map<RecordKind, ReturnType<typeof converterOf>>()

function convert(kind: RecordKind, value: unknown, report: FileReport, sortedAt: number): unknown {
  const converter = converters.get(kind) ?? converterOf(kind)
  converters.set(kind, converter)
  const reportFault: ReportQuantity = (pointer, fault, kinds) => reportQuantity(pointer, fault, kinds, report)
  return converter(value, reportFault, sortedAt)
}

/** Says why a text is not YAML. */
export function reportYaml(
  { code, message, line, column }: YamlFault,
  text: string,
  report: FileReport,
): void {
  const source = text.split('\n')[line - 1] ?? ''
  const mark = blockMark(source, column, message)
  if (mark !== null) {
    report.atPosition(
      line,
      mark,
      'yaml-block-mark',
      'the value begins with > or |, which YAML reads as the start of block text',
      'write the value read, or put the text in quotes; a result below a bound is written < 0.1 %',
    )
  } else if (/non-printable/.test(message)) reportRawControl(line, column, text, report)
  else if (/null byte/.test(message)) {
    const at = lineAndColumn(lineStarts(text), text.indexOf('\0'))
    reportRawControl(at.line, at.column, text, report)
  } else if (code === 'yaml-alias')
    report.atPosition(line, column, code, 'an alias (*name) is used', 'write the value out')
  else if (code === 'yaml-duplicate-key')
    report.atPosition(
      line,
      column,
      code,
      'the key appears twice in this mapping',
      'keep one of the two',
      firstOfKey(text, line, column),
    )
  else if (code === 'yaml-empty')
    report.atPosition(1, 1, code, 'the file holds no record', 'write the record, or remove the file')
  else if (/single document/.test(message))
    report.atPosition(
      line,
      column,
      code,
      'this line ends the record, and more follows it; a file holds one record',
      'remove the line, or put what follows it in a file of its own',
    )
  else {
    const told = syntaxFault({ code, message, line, column }, text)
    report.atPosition(told.line, told.column, code, told.message, told.mend)
  }
}

/**
 * Column of a > or | that begins a value and made YAML expect block text; null where the fault is another.
 * Note: between braces block text cannot stand, and the parser only says that an entry is not as it should
 * be.
 */
function blockMark(source: string, column: number, message: string): number | null {
  if (/line break is expected/.test(message) && /:\s*[>|]/.test(source))
    return source.search(/:\s*[>|]/) + (/:\s*[>|]/.exec(source)?.[0].length ?? 1)
  const before = /:[ \t]*[>|]?[ \t]*$/.exec(source.slice(0, column))
  return before !== null && /[>|]/.test(source[column - 1] ?? '') ? column : null
}
