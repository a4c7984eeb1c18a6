/** What a pasted column means, asked before it is put into the fields. */
import type { Edit } from '../../records/edit/edit-yaml.ts'
import type { Plain } from '../../records/edit/write-yaml.ts'
import { fieldsForColumn } from '../../records/form/column-fields.ts'
import { typedEdits } from '../../records/form/form-edits.ts'
import type { FormField } from '../../records/form/form-parts.ts'
import { commaCell, type CommaMeaning, pastedCells, readColumn } from '../../records/form/pasted-column.ts'
import { unitsFor } from '../../records/form/units-for.ts'
import { button, element } from '../elements.ts'

interface PastedColumn {
  readonly field: FormField
  readonly fields: readonly FormField[]
  readonly text: string
  readonly record: Plain | undefined
  readonly edit: (edits: readonly Edit[]) => void
  /** Where the focus goes when the panel is gone. */
  readonly back: () => void
}

/** Shows the panel, with the focus in it. */
export function askPasted(place: HTMLElement, pasted: PastedColumn): void {
  const cells = pastedCells(pasted.text)
  const comma = commaCell(cells)
  const units = unitsFor(pasted.field.path)
  const targets = fieldsForColumn(pasted.field, pasted.fields, cells.length)
  const fault = element('p', [], 'bench-fault')
  fault.setAttribute('role', 'alert')
  const meanings = comma === undefined ? [] : commaChoice(comma)
  const unit = unitChoice(units)
  const close = () => {
    place.replaceChildren()
    pasted.back()
  }
  const put = () => {
    const meaning = place.querySelector<HTMLInputElement>('input[name="comma"]:checked')?.value as
      | CommaMeaning
      | undefined
    if (comma !== undefined && meaning === undefined) {
      fault.textContent = 'Say first what the comma is.'
      return
    }
    const read = readColumn(cells, { ...(meaning && { comma: meaning }), unit: unit?.value ?? '' })
    if ('fault' in read) fault.textContent = `${read.fault}.`
    else if (read.asksUnit && unit !== undefined && unit.value === '')
      fault.textContent = 'Say first in which unit they were read.'
    else {
      pasted.edit(
        targets.flatMap((target, place) => {
          const cell = read.cells[place] ?? ''
          return cell === '' ? [] : typedEdits(target, cell, pasted.record)
        }),
      )
      close()
    }
  }
  const heading = element('h3', [`${cells.length} cells pasted`])
  heading.tabIndex = -1
  const over = cells.length - targets.length
  const panel = element(
    'div',
    [
      heading,
      element('p', [cells.join(' · ')]),
      ...(0 < over ? [element('p', [`There is no field for the last ${over} of them.`])] : []),
      ...meanings,
      ...(unit === undefined ? [] : [element('label', ['Unit of figures without one ', unit])]),
      fault,
      element('div', [button('Put them in', put), button('Leave them', close)], 'actions'),
    ],
    'note',
  )
  place.replaceChildren(panel)
  heading.focus()
}

function commaChoice({ cell, decimal, thousands }: NonNullable<ReturnType<typeof commaCell>>): HTMLElement[] {
  const choice = (value: CommaMeaning, text: string) => {
    const input = element('input', [])
    input.type = 'radio'
    input.name = 'comma'
    input.value = value
    return element('label', [input, text])
  }
  return [
    element(
      'fieldset',
      [
        element('legend', [`What is the comma in “${cell}”?`]),
        choice('decimal', `the decimal sign: ${decimal}`),
        choice('thousands', `it parts thousands: ${thousands}`),
      ],
      'inline',
    ),
  ]
}

function unitChoice(units: readonly string[]): HTMLSelectElement | undefined {
  if (units.length === 0) return undefined
  const select = element('select', [
    element('option', ['']),
    ...units.map((unit) => element('option', [unit])),
  ])
  return select
}
