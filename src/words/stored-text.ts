/**
 * Texts that documents of format 1 hold as sentences, with dates as the records write them ("2026-04-08") and
 * units in plain letters ("ohm m"). An issued document never changes, since its digest is on record, so its
 * texts are made fit for print here, when the page is drawn. Verdicts of today and findings are still worded as
 * those documents store them. Nothing else is rewritten: what stands as data is printed by its own words.
 */
import { date } from './dates.ts'
import { fullSentence } from './sentences.ts'
import { unitSign } from './units.ts'

/** The text with its calendar dates as they stand on a page. */
export function withPrintedDates(text: string): string {
  return text.replace(/\b\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2})?)?\b/g, (moment) => date(moment))
}

/** The text as a full sentence, its dates and the units behind its numbers as they stand on a page. */
export function storedSentence(text: string): string {
  return fullSentence(withPrintedUnits(withPrintedDates(text)))
}

/** "2.337 g/cm3" becomes "2.337 g/cm³". */
function withPrintedUnits(text: string): string {
  return text.replace(/(?<=\d[ \u00a0])(?:g\/cm3|m2\/kg|mm2|ohm m|ohm|degC)\b/g, unitSign)
}

/** The particular "20 % of the cement by mass" as it stands in a sentence: "20 % of the cement replaced by mass". */
export function storedReplacement(text: string): string {
  const by = ['mass', 'volume'].map((word) => ` of the cement by ${word}`).find((end) => text.endsWith(end))
  if (by === undefined) return `${text} replaced`
  return `${text.slice(0, -by.length)}${by.replace(' by ', ' replaced by ')}`
}
