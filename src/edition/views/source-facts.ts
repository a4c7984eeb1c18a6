/** The particulars of a source, as far as its record has them. */
import type { Moment } from '../../core/measure/moment.ts'
import { date } from '../../words/dates.ts'
import { contactWords } from '../../words/contact.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'

export interface SourceFact {
  readonly label: string
  readonly text: string
}

export function sourceFacts(
  { producers }: Pick<Edition, 'producers'>,
  { record }: Pick<SourceEntry, 'record'>,
): SourceFact[] {
  const producer = producers.get(record.producer)
  const facts: [string, string | undefined][] = [
    ['Producer', producer && [producer.name, ...producer.address].join(', ')],
    ['Telephone, mail', producer && contactWords(producer)],
    ['Plant', record.plant && producer?.plants?.[record.plant]?.name],
    ['Marketing entity', record['marketing-entity']],
    ['Class claimed', record.class],
    ['Trade name', record['trade-name']],
    ['Unit', record.unit],
    ['Deposit', record.deposit],
    ['Coal', record['coal-sources']?.join(', ')],
    ['Co-firing', record['co-firing']],
    ['Additives and treatment', record.additives],
    ['Lot numbers', record['lot-number-pattern']],
    ['Safety data sheet', record['safety-data-sheet']],
    ['Agency’s number', record['agency-numbers']?.map(numberWords).join('; ')],
    ['Approvals', record.approvals?.map(approvalWords).join('; ')],
    ['Events', record.events?.map(eventWords).join('; ')],
  ]
  return facts.flatMap(([label, text]) => (text === undefined ? [] : [{ label, text }]))
}

type SourceRecord = SourceEntry['record']

function numberWords({
  agency,
  number,
  from,
  to,
}: NonNullable<SourceRecord['agency-numbers']>[number]): string {
  const since = from === undefined ? '' : `, from ${date(from)}`
  return `${number} (${agency}${since}${until(to)})`
}

function approvalWords({ by, scope, from, to }: NonNullable<SourceRecord['approvals']>[number]): string {
  return `${by}: ${scope}, from ${date(from)}${until(to)}`
}

function eventWords({ title, date: from, to }: NonNullable<SourceRecord['events']>[number]): string {
  return `${title} (${date(from)}${until(to)})`
}

function until(to: Moment | undefined): string {
  return to === undefined ? '' : ` to ${date(to)}`
}
