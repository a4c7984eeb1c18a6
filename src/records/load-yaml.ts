/** One file's YAML to a loaded record: syntax, schema, quantities. */
import { converterOf } from './convert.ts'
import type { FileReport } from './report.ts'
import { reportQuantity, reportSchemaErrors } from './schema-faults.ts'
import { type RecordKind, validatorOf } from './schemas.ts'
import { readYaml, type YamlFault } from './yaml-source.ts'

/** The loaded record; undefined where anything in it is at fault. */
export function loadYaml(kind: RecordKind, text: string, report: FileReport): unknown {
  const yaml = readYaml(text)
  if ('fault' in yaml) {
    reportYaml(yaml.fault, text, report)
    return undefined
  }
  const validate = validatorOf(kind)
  const valid = validate(yaml.value)
  if (!valid) reportSchemaErrors(validate.errors ?? [], report)
  const before = report.count()
  if (typeof yaml.value !== 'object' || yaml.value === null) return undefined
  const record = convert(kind, yaml.value, report)
  return valid && report.count() === before ? record : undefined
}

const converters = new Map<RecordKind, ReturnType<typeof converterOf>>()

function convert(kind: RecordKind, value: unknown, report: FileReport): unknown {
  const converter = converters.get(kind) ?? converterOf(kind)
  converters.set(kind, converter)
  return converter(value, (pointer, fault, kinds) => reportQuantity(pointer, fault, kinds, report))
}

function reportYaml({ code, message, line, column }: YamlFault, text: string, report: FileReport): void {
  const source = text.split('\n')[line - 1] ?? ''
  if (/line break is expected/.test(message) && /:\s*[>|]/.test(source)) {
    report.atPlace(line, source.search(/[>|]/) + 1, 'yaml-block-mark', 'the value begins with a sign that YAML reads as the mark of block text', 'write the value read, or put the text in quotes; a bound from below is written < 0.1 %')
  } else if (code === 'yaml-alias') report.atPlace(line, column, code, 'an alias (*name) is used', 'write the value out')
  else if (code === 'yaml-duplicate-key') report.atPlace(line, column, code, 'the key stands twice in this mapping', 'keep one of the two')
  else report.atPlace(line, column, code, `this is not YAML: ${message}`, 'check indentation, colons, quotes and brackets here and on the line above')
}
