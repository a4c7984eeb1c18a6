/** The record leaves the page by its owner's hand alone: as a file, or copied. */
import { anchor } from '../elements.ts'

/** Some browsers read the file only after the click has ended. */
const READ_AFTER_MS = 60_000

/** Hands the text over as a file for the browser to save. */
export function saveAs(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }))
  const link = anchor(address, '')
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), READ_AFTER_MS)
}

/** @returns whether the browser let the page copy */
export async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text)
    return true
  } catch {
    return false
  }
}
