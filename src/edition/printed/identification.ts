/** Who made what, when, how much, from what. */
import { setName } from '../../core/criteria/criterion.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { period } from '../../words/dates.ts'
import { kindWords } from '../../words/material-kinds.ts'
import { massText } from '../../words/units.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'
import type { PrintedFact, PrintedOrigin } from '../shape/printed-certificate.ts'
import { contactLinks } from './contact-links.ts'
import { fact, ifStated } from './fact.ts'

type Identified = Pick<CertificateFacts, 'source' | 'lot' | 'criteria' | 'units'>
type Originated = Pick<CertificateFacts, 'producer' | 'source'>

/** Coal and its burning are asked of these, a deposit of the others. */
const COAL_ASHES: readonly MaterialKind[] = ['coal-fly-ash', 'coal-bottom-ash', 'harvested-coal-ash']

/** What identifies the lot itself. */
export function identification(facts: Identified): PrintedFact[] {
  const { lot } = facts
  return [
    { label: 'Material, class', text: materialWords(facts) },
    { label: 'Produced', text: period(lot.produced.from, lot.produced.to) },
    { label: 'Quantity', text: massText(lot.quantityT, facts.units) },
    fact('Silo or bin', [lot.silo]),
    ...ifStated('Feed', lot.feed),
    ...ifStated('Blended from', lot.blend.map((part) => `${part.share} ${part.source}`).join(', ')),
    ...ifStated('Seals', lot.seals.join(', ')),
    ...ifStated('Purchase order', lot.purchaseOrder ?? null),
    ...ifStated('Note', lot.note).map((note): PrintedFact => ({ ...note, wide: true })),
  ]
}

/** Who made it from what: alike for all lots of a source. */
export function printedOrigin({ producer, source }: Originated): PrintedOrigin {
  return {
    before: [
      fact('Producer', [producer.name, ...producer.address]),
      ...contactFact(producer),
      fact('Plant or terminal; unit', [producer.plant, source.unit], '; '),
      ...ifStated('Marketed by', producer.marketingEntity),
      {
        label: 'Source',
        lead: { text: source.name, to: { kind: 'source', id: source.id } },
        text: source.tradeName === null ? '' : `, sold as ${source.tradeName}`,
      },
      ...ifStated('Agency’s number of the source', agencyNumbers(source)),
    ],
    after: [...originFacts(source), fact('Safety data sheet', [source.safetyDataSheet])],
  }
}

function contactFact(producer: Originated['producer']): PrintedFact[] {
  const contacts = contactLinks(producer)
  return contacts.length === 0 ? [] : [{ label: 'Telephone, mail', contacts }]
}

function agencyNumbers({ agencyNumbers = [] }: Originated['source']): string {
  return agencyNumbers.map(({ agency, number }) => `${number} (${agency})`).join('; ')
}

function materialWords({ source, lot, criteria: [governing] }: Identified): string {
  const kind = kindWords(source.kind)
  if (lot.class === null) return `${kind}, no class claimed`
  return `${kind}, class ${lot.class}${governing === undefined ? '' : ` of ${setName(governing)}`}`
}

/** What an ash comes from and what was added to it; of another material its deposit. */
function originFacts(source: Identified['source']): PrintedFact[] {
  if (!COAL_ASHES.includes(source.kind))
    return [fact('Deposit', [source.deposit]), ...ifStated('Additives', source.additives)]
  return [
    fact('Coal sources', source.coalSources),
    fact('Co-firing; additives', [source.coFiring, source.additives], '; '),
    ...ifStated('Storage cell', source.deposit),
  ]
}
