/** Each test mortar with its control in one line; readings stand in the annex. */
import { shortDate } from '../../words/dates.ts'
import { sentence, unbroken } from '../../words/sentences.ts'
import { writtenText } from '../../words/units.ts'
import type { CertificateFacts, CertificateMortar } from '../shape/certificate-facts.ts'
import type { PrintedCondition, PrintedMortars } from '../shape/printed-certificate.ts'
import { conditionIn, type CertificateCondition } from './names.ts'

type WithMortars = Pick<CertificateFacts, 'conditions' | 'mortars' | 'deviations' | 'departures' | 'results'>

const FINISHED = 'The laboratory reported finished figures; its readings of mortars are not on record.'

export function printedMortars(facts: WithMortars): PrintedMortars {
  const isFinished = facts.mortars.length === 0 && facts.results.some(isFinishedIndex)
  return {
    ...(isFinished ? { note: FINISHED } : {}),
    mortars: facts.mortars.map((mortar) => ({
      condition: mortar.condition,
      line: unbroken(mortarLine(mortar, conditionIn(facts, mortar.condition))),
    })),
    departures: [
      ...facts.deviations,
      ...(facts.departures ?? []).map(({ of, reason }) => `${of}: ${reason}`),
      ...facts.mortars.flatMap(exclusionWords),
    ].map((text) => unbroken(sentence(text))),
  }
}

function isFinishedIndex({ finished, condition }: CertificateFacts['results'][number]): boolean {
  return finished === true && condition !== undefined
}

/** @param condition of the mortar, where it is on record */
export function printedCondition(condition: CertificateCondition): PrintedCondition {
  const { title, replacement, particulars } = condition
  const summary = [replacement, particular(condition, 'Curing')].filter((part) => part !== undefined)
  return { title: unbroken(title), summary: unbroken(sentence(summary.join('; '))), particulars }
}

function mortarLine(mortar: CertificateMortar, condition: CertificateCondition | undefined): string {
  const { control } = mortar
  return [
    `cast ${shortDate(mortar.cast)}`,
    bothWords('flow', mortar.flow, control?.flow),
    mortar.water === undefined && control?.water === undefined
      ? waterOf(condition)
      : bothWords('water', mortar.water, control?.water),
    control === undefined ? 'no control batch on record' : controlWords(control),
  ]
    .filter((part) => part !== undefined)
    .join('; ')
}

/** As the condition states it; what does not name water itself would leave a reader to guess what its mass is of. */
function waterOf(condition: CertificateCondition | undefined): string | undefined {
  const text = condition && particular(condition, 'Water')
  return text === undefined || text.includes('w/cm') ? text : `mixing water: ${text}`
}

function particular({ particulars }: CertificateCondition, label: string): string | undefined {
  return particulars.find((candidate) => candidate.label === label)?.text
}

function bothWords(what: string, test: string | undefined, control: string | undefined): string {
  const words = (text: string | undefined) => (text === undefined ? 'not recorded' : writtenText(text))
  return `${what} ${words(test)} (control ${words(control)})`
}

function controlWords({
  id,
  cast,
  cementLot,
  cementType,
  cementAlkalis,
}: NonNullable<CertificateMortar['control']>): string {
  const type = cementType === undefined ? '' : ` (${cementType})`
  const alkalis = cementAlkalis === undefined ? '' : `, alkalis ${writtenText(cementAlkalis)} as Na₂O`
  return `control batch ${id} cast ${shortDate(cast)} with cement lot ${cementLot ?? 'not recorded'}${type}${alkalis}`
}

function exclusionWords({ readings }: CertificateMortar): string[] {
  return readings.flatMap((reading) =>
    reading.specimens
      .filter(({ excluded }) => excluded !== undefined)
      .map(
        ({ mark, excluded }) =>
          `excluded ${reading.of} specimen ${mark} (${reading.what}, ${reading.age}): ${excluded}`,
      ),
  )
}
