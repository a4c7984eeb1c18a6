/** Who made what, when, how much, from what. */
import { setName } from '../../core/criteria/criterion.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { period } from '../../words/dates.ts'
import { kindWords } from '../../words/material-kinds.ts'
import { massText } from '../../words/units.ts'
import { paths } from '../shape/addresses.ts'
import type { CertificateDocument } from '../shape/document.ts'
import type { Edition } from '../shape/edition.ts'
import { type Fact, fact } from './fact.ts'
import { linked } from './linked.ts'

type Identified = Pick<CertificateDocument, 'producer' | 'source' | 'lot' | 'criteria'>

/** Coal and its burning are asked of these, a deposit of the others. */
const COAL_ASHES: readonly MaterialKind[] = ['coal-fly-ash', 'coal-bottom-ash', 'harvested-coal-ash']

export function identification(
  edition: Pick<Edition, 'address' | 'sources' | 'site'>,
  document: Identified,
): Fact[] {
  const { producer, source, lot } = document
  return [
    fact('Producer', [producer.name, ...producer.address]),
    fact('Plant or terminal; unit', [producer.plant, source.unit], '; '),
    ...ifStated('Marketed by', producer.marketingEntity),
    {
      label: 'Source',
      lead: linked(edition, source.name, edition.sources.has(source.id) ? paths.source(source.id) : null),
      text: source.tradeName === null ? '' : `, sold as ${source.tradeName}`,
    },
    { label: 'Material, class', text: materialWords(document) },
    { label: 'Produced', text: period(lot.produced.from, lot.produced.to) },
    { label: 'Quantity', text: massText(lot.quantityT, edition.site.units) },
    fact('Silo or bin', [lot.silo]),
    ...originFacts(source),
    ...ifStated('Feed', lot.feed),
    ...ifStated('Blended from', lot.blend.map((part) => `${part.share} ${part.source}`).join(', ')),
    ...ifStated('Seals', lot.seals.join(', ')),
    fact('Safety data sheet', [source.safetyDataSheet]),
    ...ifStated('Note', lot.note).map((note): Fact => ({ ...note, wide: true })),
  ]
}

function materialWords({ source, lot, criteria: [governing] }: Identified): string {
  const kind = kindWords(source.kind)
  if (lot.class === null) return `${kind}, no class claimed`
  return `${kind}, class ${lot.class}${governing === undefined ? '' : ` of ${setName(governing)}`}`
}

/** What an ash comes from and what was added to it; of another material its deposit. */
function originFacts(source: Identified['source']): Fact[] {
  if (!COAL_ASHES.includes(source.kind))
    return [fact('Deposit', [source.deposit]), ...ifStated('Additives', source.additives)]
  return [
    fact('Coal sources', source.coalSources),
    fact('Co-firing; additives', [source.coFiring, source.additives], '; '),
    ...ifStated('Storage cell', source.deposit),
  ]
}

/** A particular that not every lot has. */
function ifStated(label: string, text: string | null): Fact[] {
  return text === null || text === '' ? [] : [{ label, text }]
}
