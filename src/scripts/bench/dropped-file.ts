/** A file that somebody drops: a lot's YAML, the record of a lot as a site publishes it, or a control batch's YAML. */
import type { Plain } from '../../records/edit/write-yaml.ts'
import { writtenLot } from '../../records/form/written-lot.ts'

/** The lot that it is, as far as the file says so. */
export interface DroppedLot {
  readonly text: string
  /** SOURCE/LOT of a published record; the name of a YAML file. */
  readonly source?: string
  readonly lot?: string
}

/** A control batch that the site does not have yet, by its file's name. */
export interface DroppedControl {
  readonly control: string
  readonly text: string
}

export type Dropped = DroppedLot | DroppedControl | { readonly fault: string }

/** Larger than any lot. */
const LARGEST_BYTES = 4 * 1024 * 1024

/** @throws Error when the browser cannot read the file */
export async function droppedFile(file: File): Promise<Dropped> {
  if (LARGEST_BYTES < file.size)
    return { fault: `${file.name} is larger than any lot; the sheet is as it was` }
  const text = textIn(await file.arrayBuffer())
  return text === undefined ? notText(file.name) : droppedText(file.name, text)
}

/** The text of bytes in UTF-8; undefined for any others, of which a browser would guess or lose signs. */
function textIn(bytes: ArrayBuffer): string | undefined {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return text.includes('\0') ? undefined : text
  } catch {
    return undefined
  }
}

function notText(name: string): { readonly fault: string } {
  return isNamedAsRecord(name)
    ? { fault: `${name} is not text in UTF-8: save it so in your editor; the sheet is as it was` }
    : notRecord(name)
}

function isNamedAsRecord(name: string): boolean {
  return /\.(?:ya?ml|json)$/i.test(name)
}

function notRecord(name: string): { readonly fault: string } {
  return { fault: `${name} is neither a lot’s YAML file nor the JSON file of a published lot` }
}

export function droppedText(name: string, text: string): Dropped {
  if (/\.json$/i.test(name)) return published(name, text)
  if (!/\.ya?ml$/i.test(name)) return notRecord(name)
  const [, lot] = /^([A-Za-z0-9][A-Za-z0-9-]{0,63})\.ya?ml$/i.exec(name) ?? []
  if (lot !== undefined && isControl(text)) return { control: lot, text }
  return { text, ...(lot === undefined ? {} : { lot }) }
}

/** A lot has samples; a control batch is cast, and has none. */
function isControl(text: string): boolean {
  return /^cast:/m.test(text) && !/^samples:/m.test(text)
}

function published(name: string, text: string): Dropped {
  try {
    const { id, record } = JSON.parse(text) as { readonly id?: unknown; readonly record?: Plain }
    const [source, lot] = typeof id === 'string' ? id.split('/') : []
    if (typeof record !== 'object' || source === undefined || lot === undefined)
      return { fault: `${name} does not hold the record of a published lot` }
    return { text: writtenLot(record), source, lot }
  } catch {
    return { fault: `${name} is not JSON` }
  }
}
