/** A form's choices in the page's address, so that it can be sent to somebody. */

export function keepInAddress(form: HTMLFormElement): void {
  const chosen = [...new FormData(form)]
    .filter(([, value]) => value !== '')
    .map(([name, value]) => [name, String(value)])
  history.replaceState(null, '', `?${new URLSearchParams(chosen)}`)
}
