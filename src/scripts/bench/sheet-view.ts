/** The parts of the bench sheet as elements: sections, mappings, lists that grow, details that are added. */
import type { Edit } from '../../records/edit/edit-yaml.ts'
import type { Plain } from '../../records/edit/write-yaml.ts'
import { addedItem, addedKey, detailedEdits } from '../../records/form/form-edits.ts'
import type { FormField, FormGroup, FormList, FormPart } from '../../records/form/form-parts.ts'
import { button, element } from '../elements.ts'
import { fieldElement, idOf } from './field-view.ts'

export interface Drawing {
  readonly change: (edits: readonly Edit[], focus?: string) => void
  readonly fields: ReadonlyMap<string, FormField>
  readonly record: () => Plain | undefined
}

/** A part of the sheet. One that holds a single list is that list. */
export function sectionElement(section: FormGroup, drawing: Drawing): HTMLElement {
  const [only, ...others] = section.parts
  const heading = element('h3', [section.legend])
  const body =
    only?.kind === 'list' && others.length === 0
      ? listBody(only, drawing)
      : [grid(section.parts, drawing), ...further(section, drawing)]
  return element('section', [heading, ...body], 'bench-section')
}

/** Fields stand beside each other, what has a heading of its own below them, in the order of the sheet. */
function grid(parts: readonly FormPart[], drawing: Drawing): HTMLElement {
  return element(
    'div',
    parts.map((part) => partElement(part, drawing)),
    'bench-grid',
  )
}

function partElement(part: FormPart, drawing: Drawing): HTMLElement {
  if (part.kind === 'field')
    return fieldElement(part, () => drawing.change(detailedEdits(part), idOf(part.path)))
  return part.kind === 'group' ? groupElement(part, drawing) : listElement(part, drawing)
}

function groupElement(group: FormGroup, drawing: Drawing): HTMLElement {
  const id = idOf(group.path)
  const legend = element('legend', [group.legend])
  const box = element(
    'fieldset',
    [legend, grid(group.parts, drawing), ...further(group, drawing)],
    'bench-group',
  )
  // Parts of one mapping share its path: only the mapping itself is found by it.
  if (group.removable || group.nextKey !== undefined || group.help !== '') {
    box.id = id
    legend.id = `${id}-legend`
  }
  return box
}

function listElement(list: FormList, drawing: Drawing): HTMLElement {
  const box = element(
    'fieldset',
    [element('legend', [list.legend]), ...listBody(list, drawing)],
    'bench-group',
  )
  return box
}

function listBody(list: FormList, drawing: Drawing): HTMLElement[] {
  const id = idOf(list.path)
  const items = list.items.map((item) =>
    item.kind === 'field' ? partElement(item, drawing) : itemElement(item, drawing, `${id}-add`),
  )
  const add = button(`Add ${article(list.one)}`, () =>
    drawing.change(addedItem(list.path, drawing.record()), idOf([...list.path, list.items.length])),
  )
  add.id = `${id}-add`
  return [...items, add]
}

/** One of a list folds, so that a long record stays a short page. */
function itemElement(item: FormGroup, drawing: Drawing, back: string): HTMLElement {
  const id = idOf(item.path)
  const title = element('span', [item.legend])
  title.id = `${id}-legend`
  const take = button(`Take out`, () => drawing.change([{ remove: item.path }], back))
  take.setAttribute('aria-describedby', title.id)
  take.id = `${id}-out`
  const details = element(
    'details',
    [
      element('summary', [title]),
      grid(item.parts, drawing),
      element('div', [...further(item, drawing), take], 'bench-further'),
    ],
    'bench-item',
  )
  details.id = id
  details.open = true
  return details
}

/** What else can be written here. */
function further(group: FormGroup, drawing: Drawing): HTMLElement[] {
  const { path, nextKey } = group
  const added = (key: string) => drawing.change(addedKey([...path, key]), idOf([...path, key]))
  const parts: HTMLElement[] = []
  if (nextKey !== undefined) {
    const next = button('Add one more', () => added(nextKey))
    next.id = `${idOf(path)}-next`
    next.setAttribute('aria-describedby', `${idOf(path)}-legend`)
    parts.push(next)
  }
  if (0 < group.further.length) parts.push(furtherElement(group, added))
  return parts.length === 0 ? [] : [element('div', parts, 'bench-further')]
}

function furtherElement(
  { path, legend, further: keys }: FormGroup,
  added: (key: string) => void,
): HTMLElement {
  const choice = element('select', [
    option('', 'add a detail …'),
    ...keys.map(({ key, label }) => option(key, label)),
  ])
  choice.id = `${idOf(path)}-further`
  choice.setAttribute('aria-label', `Further details of ${legend}`)
  const add = button('Add', () => {
    if (choice.value !== '') added(choice.value)
  })
  add.id = `${idOf(path)}-further-add`
  add.setAttribute('aria-label', `Add the chosen detail to ${legend}`)
  return element('span', [choice, add], 'bench-choice')
}

function option(value: string, text: string): HTMLOptionElement {
  const made = element('option', [text])
  made.value = value
  return made
}

function article(noun: string): string {
  return `${/^[AEIOU]/.test(noun) ? 'an' : 'a'} ${noun.charAt(0).toLowerCase()}${noun.slice(1)}`
}
