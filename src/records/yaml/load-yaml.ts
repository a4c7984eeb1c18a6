/** One file's YAML to a loaded record: syntax, schema, quantities. */
import { converterOf, type ReportQuantity } from '../schema/convert.ts'
import { reportForbiddenKeys } from './forbidden-keys.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { reportQuantity } from '../schema/quantity-faults.ts'
import { reportSchemaErrors } from '../schema/schema-faults.ts'
import { type RecordKind, validatorOf } from '../schema/schemas.ts'
import { parseYaml, type YamlFault } from './parse-yaml.ts'
import { reportStrangeBlanks } from './strange-blanks.ts'
import { reportRawControl, reportUnseen } from './unseen-characters.ts'

/**
 * The loaded record; undefined where anything in it is at fault.
 * @param sortedAt minutes ahead of UTC that sorting takes where a moment states no offset
 */
export function loadYaml(kind: RecordKind, text: string, report: FileReport, sortedAt = 0): unknown {
  const yaml = parseYaml(text)
  if ('fault' in yaml) {
    if (!reportStrangeBlanks(text, report)) reportYaml(yaml.fault, text, report)
    return undefined
  }
  const validate = validatorOf(kind)
  const valid = validate(yaml.value)
  // Whatever else the schema says follows from such a blank.
  if (!valid && reportStrangeBlanks(text, report)) return undefined
  const before = report.count()
  if (!valid) reportSchemaErrors(validate.errors ?? [], report)
  reportForbiddenKeys(yaml.value, text, report)
  reportUnseen(yaml.value, report)
  if (typeof yaml.value !== 'object' || yaml.value === null) return undefined
  const record = convert(kind, yaml.value, report, sortedAt)
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

const converters = new Map<RecordKind, ReturnType<typeof converterOf>>()

function convert(kind: RecordKind, value: unknown, report: FileReport, sortedAt: number): unknown {
  const converter = converters.get(kind) ?? converterOf(kind)
  converters.set(kind, converter)
  const reportFault: ReportQuantity = (pointer, fault, kinds) => reportQuantity(pointer, fault, kinds, report)
  return converter(value, reportFault, sortedAt)
}

function reportYaml({ code, message, line, column }: YamlFault, text: string, report: FileReport): void {
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
  else if (code === 'yaml-alias')
    report.atPosition(line, column, code, 'an alias (*name) is used', 'write the value out')
  else if (code === 'yaml-duplicate-key')
    report.atPosition(line, column, code, 'the key appears twice in this mapping', 'keep one of the two')
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
  else if (/^[ -]*\t/.test(source))
    report.atPosition(
      line,
      source.indexOf('\t') + 1,
      code,
      'a tab indents this line, and YAML takes only spaces there',
      'write spaces in its place, two for each level as a rule',
    )
  else
    report.atPosition(
      line,
      column,
      code,
      `this is not YAML: ${message}`,
      'check indentation, colons, quotes and brackets here and on the line above',
    )
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
