/** Each test mortar with its control in one line; readings stand in the annex. */
import { shortDate } from '../../words/dates.ts'
import { sentence, unbroken } from '../../words/sentences.ts'
import { writtenText } from '../../words/units.ts'
import { storedReplacement, withPrintedDates } from '../../words/stored-text.ts'
import type { CertificateDocument, DocumentMortar } from '../shape/document.ts'
import { conditionIn, type DocumentCondition } from './document-names.ts'

export interface MortarsView {
  readonly mortars: readonly { readonly condition: string; readonly line: string }[]
  /** Deviations from the methods and specimens left out, a part each; empty without any. */
  readonly departures: readonly string[]
}

type WithMortars = Pick<CertificateDocument, 'conditions' | 'mortars' | 'deviations'>

export function mortarsView(document: WithMortars): MortarsView {
  return {
    mortars: document.mortars.map((mortar) => {
      const condition = conditionIn(document, mortar.condition)
      return {
        condition: unbroken(condition?.title ?? mortar.condition),
        line: unbroken(sentence(mortarLine(mortar, condition))),
      }
    }),
    departures: [
      ...document.deviations.map(withPrintedDates),
      ...document.mortars.flatMap(exclusionWords),
    ].map(sentence),
  }
}

function mortarLine(mortar: DocumentMortar, condition: DocumentCondition | undefined): string {
  const { control } = mortar
  const particular = (label: string) =>
    condition?.particulars.find((candidate) => candidate.label === label)?.text
  const replacement = particular('Replacement')
  return [
    replacement === undefined ? undefined : storedReplacement(replacement),
    particular('Curing'),
    `cast ${shortDate(mortar.cast)}`,
    bothWords('flow', mortar.flow, control.flow),
    mortar.water === undefined && control.water === undefined
      ? particular('Water')
      : bothWords('water', mortar.water, control.water),
    controlWords(control),
  ]
    .filter((part) => part !== undefined)
    .join('; ')
}

function bothWords(what: string, test: string | undefined, control: string | undefined): string {
  const words = (text: string | undefined) => (text === undefined ? 'not recorded' : writtenText(text))
  return `${what} ${words(test)} (control ${words(control)})`
}

function controlWords({ id, cast, cementLot, cementType, cementAlkalis }: DocumentMortar['control']): string {
  const type = cementType === undefined ? '' : ` (${cementType})`
  const alkalis = cementAlkalis === undefined ? '' : `, alkalis ${writtenText(cementAlkalis)} as Na₂O`
  return `control batch ${id} cast ${shortDate(cast)} with cement lot ${cementLot}${type}${alkalis}`
}

function exclusionWords({ readings }: DocumentMortar): string[] {
  return readings.flatMap((reading) =>
    reading.specimens
      .filter(({ excluded }) => excluded !== undefined)
      .map(
        ({ mark, excluded }) =>
          `excluded ${reading.of} specimen ${mark} (${reading.what}, ${reading.age}): ${excluded}`,
      ),
  )
}
