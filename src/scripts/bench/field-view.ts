/** One field of the form: its label, what it is for, what is at fault with it. */
import type { Path } from '../../records/edit/edit-yaml.ts'
import type { FormField } from '../../records/form/form-parts.ts'
import { element } from '../elements.ts'

/** The id of a place on the page; no part of a path holds a space then. */
export function idOf(path: Path): string {
  return `lot/${path.map((part) => encodeURIComponent(part)).join('/')}`
}

/** @param detail asks for the value to be written out with its details */
export function fieldElement(field: FormField, detail: () => void): HTMLElement {
  const id = idOf(field.path)
  const input = inputOf(field)
  input.id = id
  const label = element('label', [field.label, ...(field.required ? [' (needed)'] : [])])
  label.htmlFor = id
  const help = element('span', [helpText(field)], 'unseen')
  help.id = `${id}-help`
  const fault = element('span', [], 'bench-fault')
  fault.id = `${id}-fault`
  input.setAttribute('aria-describedby', `${help.id} ${fault.id}`)
  if (field.required) input.setAttribute('aria-required', 'true')
  return element('div', [label, input, ...detailButton(field, detail), help, fault], 'bench-field')
}

/** What the schema says of a field, with its example. */
export function helpText({ help, example }: FormField): string {
  return example === '' ? help : `${help} For instance ${example}.`
}

function inputOf(field: FormField): HTMLInputElement | HTMLSelectElement {
  if (field.choices !== undefined) return choiceOf(field, field.choices)
  const input = element('input', [])
  input.value = field.text
  input.autocomplete = 'off'
  input.spellcheck = false
  input.autocapitalize = 'none'
  if (field.number) input.inputMode = 'numeric'
  if (field.names !== undefined) input.setAttribute('list', `names-${field.names}`)
  // What no field can show is changed in the text.
  input.readOnly = field.fixed === true
  return input
}

function choiceOf({ text, choices = [] }: FormField, known: readonly string[]): HTMLSelectElement {
  // A word that is not on the list stands there all the same, with its fault.
  const words = ['', ...(known.includes(text) || text === '' ? [] : [text]), ...choices]
  const select = element(
    'select',
    words.map((word) => element('option', [word])),
  )
  select.value = text
  return select
}

function detailButton(field: FormField, detail: () => void): HTMLElement[] {
  if (field.detailed === undefined || field.text === '' || field.fixed === true) return []
  const more = element('button', ['…'], 'bench-detail')
  more.type = 'button'
  more.id = `${idOf(field.path)}-detail`
  more.setAttribute('aria-label', `Details of ${field.label}`)
  more.addEventListener('click', detail)
  return [more]
}

/** Puts a value into its field; whoever is typing there has put it in already. */
export function fillField(field: FormField): void {
  const input = document.getElementById(idOf(field.path))
  if (!(input instanceof HTMLInputElement || input instanceof HTMLSelectElement)) return
  if (input.value.trim() !== field.text) input.value = field.text
}
