/** A file that is chosen, or dropped anywhere on the bench. */
import { parts } from './parts.ts'

export function onFile(open: (file: File) => void): void {
  const { page, file } = parts
  file.addEventListener('change', () => {
    const [chosen] = file.files ?? []
    if (chosen !== undefined) open(chosen)
    // The same file can be chosen again.
    file.value = ''
  })
  page.addEventListener('dragover', (event) => event.preventDefault())
  page.addEventListener('drop', (event) => {
    const [dropped] = event.dataTransfer?.files ?? []
    if (dropped === undefined) return
    event.preventDefault()
    open(dropped)
  })
}
