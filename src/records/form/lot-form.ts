/** A lot's text as a form: every place that the schema knows of what is written, and what stands ready to be filled in. */
import type { Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { parseYaml, type YamlFault } from '../yaml/parse-yaml.ts'
import { pointerTo } from '../yaml/pointer.ts'
import { type Span, spansOf } from '../yaml/spans.ts'
import { NAMES, NOT_ASKED, placeOf, type SheetPart, SHEETS, USUAL_SPECIMENS } from './bench-sheet.ts'
import {
  choicesOf,
  exampleOf,
  type FormNode,
  hasOwnKeys,
  helpOf,
  isMapping,
  isShort,
  itemOf,
  labelOf,
  lotNode,
  memberOf,
  membersOf,
  requiredIn,
} from './form-node.ts'
import type { FormField, FormGroup, FormList, FormPart, FurtherKey } from './form-parts.ts'
import { nextKey } from './next-key.ts'

export type LotForm = { readonly sections: readonly FormGroup[] } | { readonly fault: YamlFault }

interface Writing {
  readonly spans: ReadonlyMap<string, Span>
}

interface Place {
  readonly node: FormNode
  readonly path: Path
  readonly value: Plain | undefined
  readonly label: string
  readonly required: boolean
}

/** The form of a text; an empty text gives that of a lot of which nothing is written yet. */
export function lotForm(text: string): LotForm {
  const parsed = parseYaml(text)
  if ('fault' in parsed && parsed.fault.code !== 'yaml-empty') return parsed
  const value = 'value' in parsed ? (parsed.value as Plain) : {}
  const writing = { spans: 'value' in parsed ? spansOf(text) : new Map() }
  const root = { node: lotNode(), path: [], value, label: 'Lot', required: true }
  const sections = partsOf(root, writing)
  return { sections: sections.filter((part): part is FormGroup => part.kind === 'group') }
}

function part(place: Place, writing: Writing): FormPart {
  const { node, value } = place
  if (itemOf(node) !== undefined && (value === undefined || Array.isArray(value) || value === ''))
    return list(place, writing)
  if (isMapping(node) && (!isShort(node) || isPlainMapping(value))) return group(place, writing)
  return field(place, writing)
}

function isPlainMapping(value: Plain | undefined): value is { readonly [key: string]: Plain } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function field({ node, path, value, label, required }: Place, { spans }: Writing): FormField {
  const names = NAMES[placeOf(path)]
  const choices = choicesOf(node)
  const detailed = isShort(node) && path.length > 0 ? keyOfText(node) : undefined
  return {
    ...{ kind: 'field', path, label, required },
    help: helpOf(node),
    example: exampleOf(node),
    text: textOf(value, spans.get(pointerTo(path))),
    number: node.node['type'] === 'number',
    ...(typeof value === 'object' && value !== null ? { fixed: true as const } : {}),
    ...(choices === undefined ? {} : { choices }),
    ...(names === undefined ? {} : { names }),
    ...(detailed === undefined ? {} : { detailed }),
  }
}

/** A number keeps its digits; what is no plain value stands as it is in the text. */
function textOf(value: Plain | undefined, span: Span | undefined): string {
  if (value === undefined || value === null) return ''
  if (typeof value === 'string') return value
  return span?.written ?? JSON.stringify(value)
}

/** The first key of a detailed value, under which its plain text stands. */
function keyOfText(node: FormNode): string | undefined {
  return membersOf(node)[0]?.[0]
}

function list({ node, path, value, label }: Place, writing: Writing): FormList {
  const item = itemOf(node) as FormNode
  const sheet = SHEETS[placeOf([...path, 0])]
  const one = sheet?.one ?? label
  const items = (Array.isArray(value) ? value : []).map((member: Plain, index): FormGroup | FormField => {
    const place = { node: item, path: [...path, index], value: member, required: true }
    const made = part({ ...place, label: `${one} ${index + 1}` }, writing)
    if (made.kind === 'list') return field({ ...place, label: `${one} ${index + 1}` }, writing)
    return made.kind === 'field'
      ? made
      : { ...made, legend: toldApart(one, index, member, sheet?.told), removable: true }
  })
  return { kind: 'list', path, legend: label, help: helpOf(node), items, one }
}

/** "Sample C, composite": what tells one of a list from the others, else its number. */
function toldApart(one: string, index: number, value: Plain, told: readonly string[] = []): string {
  const texts = isPlainMapping(value)
    ? told.map((key) => value[key]).filter((text) => typeof text === 'string' && text !== '')
    : []
  return texts.length === 0 ? `${one} ${index + 1}` : `${one} ${texts.join(', ')}`
}

function group(place: Place, writing: Writing): FormGroup {
  const { node, path, value, label, required } = place
  const parts = partsOf(place, writing)
  const written = isPlainMapping(value) ? Object.keys(value) : []
  const shown = new Set(parts.map((made) => String(made.path[path.length])))
  const own = hasOwnKeys(node)
  const laidOut = SHEETS[placeOf(path)]?.parts !== undefined
  return {
    ...{ kind: 'group', path, legend: label, help: helpOf(node), parts },
    further: laidOut ? [] : furtherKeys(node, path, shown),
    removable: !required && 0 < written.length,
    ...(own ? { nextKey: nextKey(written) } : {}),
  }
}

function hidden(path: Path, key: string): boolean {
  return path.length === 0 && NOT_ASKED.includes(key)
}

/** The parts of a mapping in the order of a bench sheet: what is written, what must be, what stands ready. */
function partsOf(place: Place, writing: Writing): FormPart[] {
  const { node, path, value } = place
  const written = isPlainMapping(value) ? value : {}
  const sheet = SHEETS[placeOf(path)]
  const ready = sheet?.ready ?? []
  // What must be written in a mapping that nobody need write is asked for once something is.
  const required = place.required || isPlainMapping(value) ? requiredIn(node) : []
  const asked = requiredIn(node)
  const made = (key: string, member: FormNode, label = labelOf(key, member)) =>
    part(
      {
        node: member,
        path: [...path, key],
        value: Object.hasOwn(written, key) ? written[key] : undefined,
        label,
        required: required.includes(key),
      },
      writing,
    )
  const isShown = (key: string) =>
    (Object.hasOwn(written, key) || asked.includes(key) || ready.includes(key)) && !hidden(path, key)
  const known = membersOf(node).filter(([key]) => isShown(key))
  const others = hasOwnKeys(node) ? ownEntries(place) : []
  if (sheet?.parts === undefined)
    return [
      ...known.map(([key, member]) => made(key, member)),
      ...others.flatMap((key) => {
        const member = memberOf(node, key)
        return member === undefined ? [] : [made(key, member, key)]
      }),
    ]
  return sheetParts(place, sheet.parts, known).map(({ legend, keys, first }) => {
    const parts = keys.map(([key, member]) => made(key, member))
    const further = first ? furtherKeys(node, path, new Set(known.map(([key]) => key))) : []
    return { kind: 'group', path, legend, help: '', parts, further, removable: false }
  })
}

function furtherKeys(node: FormNode, path: Path, shown: ReadonlySet<string>): FurtherKey[] {
  return membersOf(node)
    .filter(([key]) => !shown.has(key) && !hidden(path, key))
    .map(([key, member]) => ({ key, label: labelOf(key, member) }))
}

interface LaidOut {
  readonly legend: string
  readonly keys: readonly [string, FormNode][]
  readonly first: boolean
}

/** What a sheet does not name stands in its first part, so that no part of a record is left out of its form. */
function sheetParts(
  { node }: Place,
  parts: readonly SheetPart[],
  known: readonly [string, FormNode][],
): LaidOut[] {
  const placed = new Set(parts.flatMap(({ keys }) => keys))
  const order = (keys: readonly string[]) =>
    keys.flatMap((key) => known.filter(([candidate]) => candidate === key))
  const rest = membersOf(node)
    .map(([key]) => key)
    .filter((key) => !placed.has(key))
  return parts
    .map(({ legend, keys }, index) => ({
      legend,
      keys: order(index === 0 ? [...keys, ...rest] : keys),
      first: index === 0,
    }))
    .filter(({ keys }) => 0 < keys.length)
}

/** Keys of one's own choice that are written, and for specimens those that stand ready. */
function ownEntries({ path, value }: Place): string[] {
  const written = isPlainMapping(value) ? Object.keys(value) : []
  if (path.at(-1) !== 'specimens') return written
  const entries = [...written]
  while (entries.length < USUAL_SPECIMENS) entries.push(nextKey(entries))
  return entries
}
