/**
 * Every code that a diagnostic can carry, with its meaning. Codes are permanent: reports and editors refer to
 * them.
 */
import { CRITERION_CODES } from './criterion-codes.ts'

export const CODES = {
  'file-unreadable': 'a file cannot be read, is larger than the limit, or is not UTF-8 text',
  'file-unexpected': 'a file is where no record is expected, or a link leads out of the folder',
  'format-newer': 'the records are in a format of a later version of the program',
  'file-missing': 'a file that every content folder needs is missing',
  'id-invalid': 'a file name is not a valid id',
  'id-case': 'two ids differ only by case',
  'yaml-syntax': 'the text is not YAML',
  'yaml-alias': 'an alias is used; records write everything out',
  'yaml-duplicate-key': 'a key appears twice in one mapping',
  'yaml-forbidden-key': 'a key that JavaScript treats as special',
  'yaml-comma-split': 'a comma in a flow mapping made two entries of one number',
  'yaml-block-mark': 'a value beginning with > or | was read as block text',
  'yaml-empty': 'a file or a value is empty',
  'conflict-marker': 'a merge left its marks: both versions of some lines stand in the file',
  'curly-quotes': 'a value stands in curly quotes, which YAML takes for part of the text',
  'value-blank': 'a value of a lot or a control batch is not written yet, and counts as not known',
  placeholder: 'a text that a new record was laid out with has not been replaced',
  schema: 'a value does not match the schema',
  'key-unknown': 'a key that the schema does not know',
  'key-missing': 'a required key is missing',
  'text-not-quoted': 'a number or truth value is where text is expected',
  'text-character': 'a text holds an invisible character, such as a control character',
  quantity: 'a text is not a quantity',
  'quantity-comma': 'a comma in a number',
  'quantity-unit': 'a unit is missing, unknown or of another kind',
  'quantity-range': 'a quantity is not physically possible',
  'quantity-bound': 'a bound such as "< 78 kN" where a value is needed to compute with',
  date: 'a text is not a calendar date or clock time',
  'reference-unknown': 'a reference names a record that does not exist',
  'reference-mismatch': 'a reference names a record that does not match',
  'class-missing': 'no class is claimed for a lot whose limits depend on it',
  'duplicate-number': 'two lots of a source have one printed number',
  'duplicate-id': 'two members of one record have one id',
  'dates-backwards': 'dates run backwards within one record',
  'date-ahead': 'something is said to have happened after the as-of date',
  'age-unknown': 'an age that the condition does not have',
  'finished-without-test': 'a finished result of a mortar does not say its condition and its age',
  'reading-twice': 'a specimen states two readings, of which one follows from the other',
  'reading-order': 'readings that must follow one another, such as times or masses of a weighing, do not',
  'reading-outside': 'a figure is asked for where a table of readings does not reach',
  'figure-off-readings': 'a stated figure differs from what its readings give',
  'reading-at-ceiling':
    'a plain resistance that the meter of its condition cannot read, or one beyond a ceiling that it does not have',
  'detail-contradicted': 'two details of a condition contradict each other',
  'revision-order': 'revisions are not numbered in order, or one follows the withdrawal of the lot',
  'issued-missing': 'an issued document is missing or cannot be read',
  'issued-altered': 'an issued document is not the one whose digest is on record',
  'issued-mismatch': 'an issued document and its line in the record differ',
  'issued-part': 'a part of an issued document is missing or altered',
  'issued-part-unused': 'a part belongs to no issued document',
  'issued-unrecorded': 'an issued document has no line in a lot’s record',
  'issued-stray': 'a file in issued/ is not an issued document',
  'method-program': 'program code in a method page',
  'method-link': 'a link or an image of a method page leads where it must not',
  'class-unfounded': 'a study compares classes, and nothing shows what a material is, or a class has none',
  'reading-missing': 'a study lists a material or a batch that its readings leave without an index',
  'limit-off-study': 'a limit or its condition differs from the study that is said to have set it',
  programme: 'the programme of a study cannot be cast as written, or cannot tell apart what is asked',
  'programme-design': 'the programme of a study leaves open what another design would show',
  'plan-digest': 'the plan of a study carries no digest, or is not the one whose digest it carries',
  ...CRITERION_CODES,
} as const

export type Code = keyof typeof CODES

/** Whether a text is one of the codes. */
export function isCode(text: string): text is Code {
  return Object.hasOwn(CODES, text)
}
