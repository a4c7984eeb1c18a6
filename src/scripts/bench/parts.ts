/** The parts of the bench page, and the addresses that it states. */

function part<T extends HTMLElement>(id: string): T {
  const found = document.getElementById(id)
  if (found === null) throw new RangeError(`the bench page needs a part named ${id}`)
  return found as T
}

const page = part<HTMLElement>('bench')

export const parts = {
  page,
  source: part<HTMLSelectElement>('bench-source'),
  lot: part<HTMLInputElement>('bench-lot'),
  under: part<HTMLSelectElement>('bench-under'),
  asOf: part<HTMLInputElement>('bench-as-of'),
  file: part<HTMLInputElement>('bench-file'),
  save: part('bench-save'),
  copy: part('bench-copy'),
  compare: part('bench-compare'),
  discard: part('bench-discard'),
  state: part('bench-state'),
  headline: part('bench-headline'),
  next: part('bench-next'),
  judged: part('bench-judged'),
  help: part('bench-help'),
  closed: part('bench-closed'),
  asked: part('bench-asked'),
  form: part('bench-form'),
  text: part('bench-text'),
  problems: part('bench-problems'),
  compared: part('bench-compared'),
}

export const addresses = {
  site: page.dataset['site'] ?? '',
  bench: page.dataset['bench'] ?? '',
  conditions: page.dataset['conditions'] ?? '',
  controls: page.dataset['controls'] ?? '',
  criteria: page.dataset['criteria'] ?? '',
  evidence: page.dataset['evidence'] ?? '',
  lots: page.dataset['lots'] ?? '',
  diagnostics: page.dataset['diagnostics'] ?? '',
}

/** Tells what has become of the work, in the one line for it. */
export function say(what: string): void {
  parts.state.textContent = what
}

/** What is read out when it changes is left alone while it says the same. */
export function fillAnew(place: HTMLElement, content: readonly Node[]): void {
  if (place.textContent !== content.map((node) => node.textContent).join(''))
    place.replaceChildren(...content)
}
