/** What may be chosen from the site's records: sets for a material, and the names that fields and text complete. */
import type { Plain } from '../../records/edit/write-yaml.ts'
import type { SiteNames } from '../../records/form/suggestions.ts'
import type { Records } from '../../records/records.ts'
import { element } from '../elements.ts'
import { parts } from './parts.ts'

/** Ids by what a field names; samples are the record's own. */
export function siteNames(records: Records | undefined, record: Plain | undefined): SiteNames {
  return {
    sample: samplesOf(record),
    laboratory: [...(records?.laboratories.keys() ?? [])],
    condition: [...(records?.conditions.keys() ?? [])],
    // The last ones cast are the likeliest.
    control: [...(records?.controls.keys() ?? [])].toReversed(),
    source: [...(records?.sources.keys() ?? [])],
  }
}

function samplesOf(record: Plain | undefined): string[] {
  const samples = (record as { readonly samples?: unknown } | null | undefined)?.samples
  if (!Array.isArray(samples)) return []
  return samples.flatMap((sample: { readonly id?: unknown } | null) =>
    typeof sample?.id === 'string' && sample.id !== '' ? [sample.id] : [],
  )
}

/** Fills the lists that fields of the form complete from. */
export function listNames(names: SiteNames): void {
  for (const [what, ids] of Object.entries(names))
    document.getElementById(`names-${what}`)?.replaceChildren(
      ...ids.map((name) => {
        const option = element('option', [])
        option.value = name
        return option
      }),
    )
}

/** Shows the sets for the source's material, and chooses the governing one where the one chosen is for another. */
export function listSets(records: Records): void {
  const { source, under } = parts
  const record = records.sources.get(source.value)
  if (record === undefined) return
  for (const option of under.options) {
    const criterion = records.criteria.get(option.value)
    option.hidden = criterion !== undefined && !criterion.kinds.some((kind) => kind === record.kind)
    option.disabled = option.hidden
  }
  const [chosen] = under.selectedOptions
  if (under.value === '' || chosen?.disabled !== false)
    under.value = record.criteria?.[0]?.set ?? records.site.criteria[0] ?? ''
}
