import type { Explanation } from './explanation.ts'

const LOT = 'lots/tuff/T-1.yaml'

/** Codes of keys and values of one record. */
export const OF_VALUES = {
  schema: {
    meaning:
      'The value is not of the form that belongs here: another word than those of a list, text where a list is expected, or a list where there is one value.',
    example: { file: LOT, wrong: 'kind: heap', right: 'kind: composite' },
    fix: 'Write what the message names. An editor that knows the schema of the record offers the choices.',
  },
  'key-unknown': {
    meaning:
      'No such key belongs here. It may be misspelt, stand at the wrong level, or be the trade’s name of a property: each property has one key. Where a name has two meanings, such as fineness, the message names both.',
    example: { file: LOT, wrong: 'retained-325: 8.4 %', right: 'residue-45um: 8.4 %' },
    fix: 'Write the key that is meant, or move it to where it belongs.',
  },
  'key-missing': {
    meaning: 'Something is computed or printed from this key, and it is not there.',
    example: {
      file: LOT,
      wrong: 'results: { SiO2: 63.1 %',
      right: 'tested: 2026-03-10, results: { SiO2: 63.1 %',
    },
    fix: 'Add the key; the message shows how its value is written.',
  },
  'value-blank': {
    meaning:
      'A value of a lot or a control batch is left open, as it is in a new record that waits for its figures. It counts as not yet known, and nothing is computed from it.',
    example: { file: LOT, wrong: 'silo:', right: 'silo: S2' },
    fix: 'Write the value behind its colon once it is known, or take the line out.',
  },
  placeholder: {
    meaning:
      'A new record is laid out with texts in angle brackets, such as <your company>, which must not be printed. No certificate is issued with one of them, and a public site with certificates is not built.',
    example: { file: 'site.yaml', wrong: 'title: "<your title>"', right: 'title: Register' },
    fix: 'Write your own text in its place.',
  },
  'text-not-quoted': {
    meaning: 'YAML reads 17 as a number and true as a truth value. Quotes keep a text as it was written.',
    example: {
      file: 'controls/K1.yaml',
      wrong: 'cement: { lot: 17 }',
      right: 'cement: { lot: "17" }',
      instead: 'cement: { lot: PC-1 }',
    },
    fix: 'Put the text in quotes.',
  },
  'text-character': {
    meaning:
      'The text holds a sign that nobody sees, such as a control character, a mark that turns the direction of writing, or a no-break space where a plain one is needed. Such signs come with text pasted from a web page or a word processor.',
    example: { file: LOT, wrong: 'bill: "BL-1\\0"', right: 'bill: BL-1' },
    fix: 'Type the text again by hand.',
  },
  'curly-quotes': {
    meaning:
      'Word processors turn straight quotes into curly ones. To YAML these are letters, so that they would become part of the value.',
    example: { file: LOT, wrong: 'kind: “composite”', right: 'kind: composite' },
    fix: 'Write straight quotes, or none. Curly quotes that are meant to be printed go inside straight ones.',
  },
  quantity: {
    meaning:
      'A quantity is a number and its unit, as on the bench sheet, and nothing else. A result below a bound is written < 0.1 %.',
    example: { file: LOT, wrong: 'quantity: about 1450 t', right: 'quantity: 1450 t' },
    fix: 'Write the number and its unit. Words go in a remark.',
  },
  'quantity-comma': {
    meaning:
      'A comma begins the decimals in one country and groups thousands in another: 17,500 lbf may be read in two ways.',
    example: {
      file: LOT,
      wrong: 'quantity: 1450,5 t',
      right: 'quantity: 1450.5 t',
      instead: 'quantity: 1450 t',
    },
    fix: 'Write a decimal point and no sign between thousands.',
  },
  'quantity-unit': {
    meaning:
      'A number without a unit, or with one of another kind, cannot be stored. Inches are written in, pounds of force lbf, and a ton says which ton it is.',
    example: { file: LOT, wrong: 'quantity: 1450', right: 'quantity: 1450 t' },
    fix: 'Write one of the units that the message names.',
  },
  'quantity-range': {
    meaning:
      'No bench reads such a value. Mostly the unit is not the one that was read: newtons as kN, psi as MPa.',
    example: { file: LOT, wrong: 'a: 78400 kN', right: 'a: 78.4 kN' },
    fix: 'Compare number and unit with the bench sheet.',
  },
  'quantity-bound': {
    meaning:
      'A value is needed to compute with, and < 0.1 says only that it is smaller. Only results of an analysis may be known so.',
    example: { file: LOT, wrong: 'quantity: < 1450 t', right: 'quantity: 1450 t' },
    fix: 'Write the value read.',
  },
  date: {
    meaning:
      'Dates are written year-month-day, with the clock time behind a T where it is known, so that nobody takes the month for the day.',
    example: { file: LOT, wrong: 'tested: 10.3.2026', right: 'tested: 2026-03-10' },
    fix: 'Write 2026-03-10 or 2026-03-10T09:20.',
  },
} as const satisfies Readonly<Record<string, Explanation>>
