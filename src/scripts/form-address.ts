/** A form's choices in the page's address, so that it can be sent to somebody. */

/** @param more what the address keeps beside the form's own fields; empty texts are left out */
export function keepInAddress(form: HTMLFormElement, more: Readonly<Record<string, string>> = {}): void {
  const chosen = [...new FormData(form), ...Object.entries(more)]
    .filter(([, value]) => value !== '')
    .map(([name, value]) => [name, String(value)])
  history.replaceState(null, '', chosen.length === 0 ? location.pathname : `?${new URLSearchParams(chosen)}`)
}
