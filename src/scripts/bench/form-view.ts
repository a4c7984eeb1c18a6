/** The form on the page: drawn anew where its parts change, else only filled, so that nobody loses their place. */
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import type { Edit } from '../../records/edit/edit-yaml.ts'
import type { Plain } from '../../records/edit/write-yaml.ts'
import { typedEdits } from '../../records/form/form-edits.ts'
import { fieldsOf, type FormField, type FormGroup, type FormPart } from '../../records/form/form-parts.ts'
import { isColumn } from '../../records/form/pasted-column.ts'
import { pointerTo } from '../../records/yaml/pointer.ts'
import { fullSentence } from '../../words/sentences.ts'
import { element } from '../elements.ts'
import { fillField, idOf } from './field-view.ts'
import { type Drawing, sectionElement } from './sheet-view.ts'

export interface FormView {
  readonly show: (sections: readonly FormGroup[], record: Plain | undefined) => void
  /** Faults by JSON pointer, each at its field. */
  readonly showFaults: (faults: ReadonlyMap<string, readonly Diagnostic[]>) => void
  /** While the text cannot be read nothing can be put into it. */
  readonly close: (closed: boolean) => void
  /** The fields of the form in the order of the sheet. */
  readonly fields: () => readonly FormField[]
}

interface FormParts {
  readonly edit: (edits: readonly Edit[]) => void
  /** Several cells were pasted into a field. */
  readonly paste: (field: FormField, text: string) => void
  /** What a field is for, beside the form. */
  readonly help: (field: FormField | undefined) => void
}

export function formIn(place: HTMLElement, { edit, paste, help }: FormParts): FormView {
  let [drawn, record]: [string, Plain | undefined] = ['', undefined]
  const fields = new Map<string, FormField>()
  const all = element('fieldset', [element('legend', ['The record as a form'], 'unseen')])
  place.replaceChildren(all)
  /** Edits, and where the focus is then. */
  const change = (edits: readonly Edit[], focus?: string) => {
    edit(edits)
    if (focus !== undefined) firstFieldIn(focus)?.focus()
  }
  const fieldAt = (target: EventTarget | null) =>
    target instanceof HTMLElement ? fields.get(target.id) : undefined
  const typed = ({ target }: Event) => {
    const field = fieldAt(target)
    if (field !== undefined) edit(typedEdits(field, (target as HTMLInputElement).value, record))
  }
  all.addEventListener('input', typed)
  all.addEventListener('paste', (event) => {
    const field = fieldAt(event.target)
    const text = event.clipboardData?.getData('text/plain') ?? ''
    if (field === undefined || !isColumn(text)) return
    event.preventDefault()
    paste(field, text)
  })
  all.addEventListener('focusin', ({ target }) => help(fieldAt(target)))
  const drawing = { change, fields, record: () => record }
  return {
    show: (sections, now) => {
      record = now
      const structure = JSON.stringify(sections, (key, value) =>
        key === 'text' || key === 'legend' ? undefined : value,
      )
      fields.clear()
      for (const field of fieldsOf(sections)) fields.set(idOf(field.path), field)
      if (structure === drawn) fill(sections)
      else redraw(all, sections, drawing)
      drawn = structure
    },
    showFaults: (faults) => {
      for (const [id, field] of fields) showFault(id, faults.get(pointerTo(field.path)) ?? [])
    },
    close: (closed) => {
      all.disabled = closed
    },
    fields: () => [...fields.values()],
  }
}

/** The focus stays on the field or button it was on; of one that is gone, on the nearest before it. */
function redraw(all: HTMLFieldSetElement, sections: readonly FormGroup[], drawing: Drawing): void {
  const focused = document.activeElement instanceof HTMLElement && all.contains(document.activeElement)
  const id = focused ? (document.activeElement?.id ?? '') : ''
  const caret =
    focused && document.activeElement instanceof HTMLInputElement
      ? document.activeElement.selectionStart
      : null
  const open = new Set([...all.querySelectorAll('details:not([open])')].map((details) => details.id))
  const [legend] = all.children
  all.replaceChildren(
    ...(legend === undefined ? [] : [legend]),
    ...sections.map((section) => sectionElement(section, drawing)),
  )
  for (const details of all.querySelectorAll('details')) if (open.has(details.id)) details.open = false
  const again = id === '' ? null : document.getElementById(id)
  again?.focus({ preventScroll: true })
  if (again instanceof HTMLInputElement && caret !== null) again.setSelectionRange(caret, caret)
}

function fill(parts: readonly FormPart[]): void {
  for (const part of parts)
    if (part.kind === 'field') fillField(part)
    else {
      const legend = document.getElementById(`${idOf(part.path)}-legend`)
      if (legend !== null && part.kind === 'group' && legend.textContent !== part.legend)
        legend.textContent = part.legend
      fill(part.kind === 'list' ? part.items : part.parts)
    }
}

function firstFieldIn(id: string): HTMLElement | null {
  const place = document.getElementById(id)
  if (place instanceof HTMLInputElement || place instanceof HTMLSelectElement) return place
  return place?.querySelector<HTMLElement>('input, select, button') ?? null
}

function showFault(id: string, faults: readonly Diagnostic[]): void {
  const input = document.getElementById(id)
  const note = document.getElementById(`${id}-fault`)
  if (input === null || note === null) return
  const text = faults.map(({ message, mend }) => fullSentence(`${message}; ${mend}`)).join(' ')
  if (note.textContent !== text) note.textContent = text
  input.toggleAttribute('aria-invalid', 0 < faults.length)
  if (0 < faults.length) input.setAttribute('aria-invalid', 'true')
}
