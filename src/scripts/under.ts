/**
 * A certificate's or a source's lots under a set of the reader's choice; `?under=SET` opens with it chosen.
 */
const place = document.querySelector<HTMLElement>('#under')
const choice = place?.querySelector<HTMLSelectElement>('select[name="under"]')
const result = place?.querySelector<HTMLElement>('.under-result')

if (place && choice && result) {
  const show = async ({ arrived }: { readonly arrived: boolean }) => {
    const id = choice.value
    history.replaceState(
      null,
      '',
      id === '' ? location.pathname : `?under=${encodeURIComponent(id)}${location.hash}`,
    )
    if (id === '') {
      result.replaceChildren()
      return
    }
    try {
      const { viewUnder } = await import('./under-view.ts')
      const view = await viewUnder(id, place)
      if (choice.value !== id) return
      result.replaceChildren(...view)
      if (arrived) leadTo(place)
    } catch {
      result.textContent = 'The evidence could not be fetched: try again later.'
    }
  }
  choice.addEventListener('change', () => {
    void show({ arrived: false })
  })
  place.querySelector('form')?.addEventListener('submit', (event) => {
    event.preventDefault()
  })
  place.hidden = false
  const asked = new URLSearchParams(location.search).get('under')
  if (asked !== null && asked !== '') {
    if ([...choice.options].some((option) => option.value === asked)) {
      choice.value = asked
      // Room of a whole screen: when the answer comes, nothing that is in sight gives way to it.
      result.classList.add('awaited')
      void show({ arrived: true })
    } else {
      result.textContent = `No specification “${asked}” is on record for this material: choose one above.`
      leadTo(place)
    }
  }
}

/** The answer to an address lies far down the page: whoever followed it is led there, by sight and by focus. */
function leadTo(part: HTMLElement): void {
  const heading = part.querySelector<HTMLElement>('h2, h3')
  heading?.setAttribute('tabindex', '-1')
  heading?.focus({ preventScroll: true })
  part.scrollIntoView({ block: 'start' })
}
