/**
 * A certificate's or a source's lots under a set of the reader's choice; `?under=SET` opens with it chosen.
 */
const place = document.querySelector<HTMLElement>('#under')
const choice = place?.querySelector<HTMLSelectElement>('select[name="under"]')
const result = place?.querySelector<HTMLElement>('.under-result')

if (place && choice && result) {
  const show = async () => {
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
      if (choice.value === id) result.replaceChildren(...view)
    } catch {
      result.textContent = 'The evidence could not be fetched: try again later.'
    }
  }
  choice.addEventListener('change', () => {
    void show()
  })
  place.querySelector('form')?.addEventListener('submit', (event) => {
    event.preventDefault()
  })
  place.hidden = false
  const asked = new URLSearchParams(location.search).get('under')
  if (asked !== null && [...choice.options].some((option) => option.value === asked)) {
    choice.value = asked
    void show()
  }
}
