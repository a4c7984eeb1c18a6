import type { Explanation } from './explanation.ts'

const LOT = 'lots/tuff/T-1.yaml'

/** Codes of a record beside others, and of what must agree within one. */
export const OF_RECORDS = {
  'reference-unknown': {
    meaning:
      'The record names another one by its id, and there is none of that id. The id is the file’s name without its ending.',
    example: { file: LOT, wrong: 'control: K7', right: 'control: K1' },
    fix: 'Write the id of a record that exists, or write the record first.',
  },
  'reference-mismatch': {
    meaning:
      'The record that is named exists, but the two do not belong together: a control made under another condition, a split of itself, a batch of another laboratory.',
    example: { file: LOT, wrong: 'condition: cool', right: 'condition: warm' },
    fix: 'Name the record that belongs here, or correct the other one; the message shows the place there.',
  },
  'class-unknown': {
    meaning:
      'A lot is judged by the limits of the class that it claims. A class that no specification has which judges the lot, or not the one that it is claimed under, has no limits: its clauses would go unjudged.',
    example: {
      file: 'sources/tuff.yaml',
      wrong: 'class: Nx\ncriteria: [{ set: by-class, from: 2020-01-01 }]',
      right: 'class: N\ncriteria: [{ set: by-class, from: 2020-01-01 }]',
      instead: 'class: N',
    },
    fix: 'Write the class as the specification names it, one category of each axis where it has axes. Where two specifications name the classes otherwise, write that of each under class-under.',
  },
  'class-missing': {
    meaning:
      'The specification that governs the lot has a limit for each class. Without one the results that it limits would go unjudged, and a failing one unseen.',
    example: {
      file: 'sources/tuff.yaml',
      wrong: 'criteria: [{ set: by-class, from: 2020-01-01 }]',
      right: 'class: N\ncriteria: [{ set: by-class, from: 2020-01-01 }]',
      instead: 'class: N',
    },
    fix: 'Write the class that you claim in the source, or in each lot where they differ.',
  },
  'duplicate-number': {
    meaning:
      'A certificate is found by the number printed on it, so that within a source each is used once. Case and full-width letters make no difference.',
    example: { file: LOT, wrong: 'number: T-9', right: 'number: T-1/26' },
    fix: 'Correct one of the two numbers.',
  },
  'duplicate-id': {
    meaning:
      'Two entries of one list have the same mark, age, month or id, and nothing says which of the two is meant where it is named.',
    example: {
      file: 'conditions/warm.yaml',
      wrong: '  - { age: 7 d, within: 3 h }\n  - { age: 7 d, within: 12 h }',
      right: '  - { age: 7 d, within: 3 h }\n  - { age: 28 d, within: 12 h }',
    },
    fix: 'Keep one of the two, or give one another mark.',
  },
  'dates-backwards': {
    meaning:
      'What comes later is dated earlier: tested before it was cast or was as old as it says, shipped before production began. The other date is shown beside it.',
    example: {
      file: LOT,
      wrong: 'produced: { from: 2026-03-02, to: 2026-02-08 }',
      right: 'produced: { from: 2026-03-02, to: 2026-03-08 }',
    },
    fix: 'Compare both with the bench sheet; one of them is wrong.',
  },
  'date-ahead': {
    meaning:
      'Something is recorded as done on a day that had not come by the date of the site. A certificate must not rest on it.',
    example: { file: LOT, wrong: 'date: 2062-03-21', right: 'date: 2026-03-21' },
    fix: 'Correct the date, or the as-of date in site.yaml. Planned tests state no date of testing.',
  },
  'age-unknown': {
    meaning:
      'A test is made at one of the ages that its condition lists with their tolerances. Without its tolerance nobody can say whether the age was kept.',
    example: { file: LOT, wrong: 'age: 9 d', right: 'age: 7 d' },
    fix: 'Correct the age, or add it to the condition.',
  },
  'age-unreached': {
    meaning:
      'A mortar is cast after its sample was taken, so that an index at 7 d cannot be tested three days after sampling. Often the day is that of the other results of the analysis. The figure is judged, and counts as known from that day on.',
    example: {
      file: LOT,
      wrong:
        'tested: 2026-03-11, results: { strength-activity-index: { value: 84 %, condition: cool, age: 7 d } }',
      right:
        'tested: 2026-03-18, results: { strength-activity-index: { value: 84 %, condition: cool, age: 7 d } }',
      instead: 'tested: 2026-03-10, results: { SiO2: 63.1 %, residue-45um: 8.4 % }',
    },
    fix: 'Write the figure in an analysis of its own, with the day of its test; a casting day under tests says more.',
  },
  'age-passed': {
    meaning:
      'A condition gives each age a tolerance, and a mortar tested 18 days after casting was not tested at 7 d. Often the day is that of a report. The figure is judged, and counts as known from that day on; of several ages under one day the last is held against it.',
    example: {
      file: LOT,
      wrong:
        'tested: 2026-04-01, results: { strength-activity-index: { value: 84 %, condition: warm, age: 7 d } }',
      right:
        'tested: 2026-03-18, results: { strength-activity-index: { value: 84 %, condition: warm, age: 7 d } }',
      instead: 'tested: 2026-03-10, results: { SiO2: 63.1 %, residue-45um: 8.4 % }',
    },
    fix: 'Write the figure in an analysis of its own, with the day of its test, and the age at which it was made.',
  },
  'finished-without-test': {
    meaning:
      'A finished index or strength says nothing without the condition and the age that it was tested at.',
    example: {
      file: LOT,
      wrong: 'tested: 2026-03-18, results: { strength-activity-index: 84 % }',
      right:
        'tested: 2026-03-18, results: { strength-activity-index: { value: 84 %, condition: warm, age: 7 d } }',
      instead: 'tested: 2026-03-10, results: { SiO2: 63.1 %, residue-45um: 8.4 % }',
    },
    fix: 'State value, condition and age together.',
  },
  'reading-twice': {
    meaning: 'A specimen has one reading. From the load the strength follows, and the two could disagree.',
    example: { file: LOT, wrong: 'c: { load: 77.2 kN, strength: 30.9 MPa }', right: 'c: 77.2 kN' },
    fix: 'Keep the reading, and leave out what is computed from it.',
  },
  'reading-at-ceiling': {
    meaning:
      'The meter of the condition reads to a ceiling. A plain figure above it was not read on this meter, and one written as above the ceiling must name that very ceiling.',
    example: {
      file: 'controls/K2.yaml',
      wrong: 'a: 900 ohm',
      right: 'a: "> 850 ohm"',
      instead: 'a: 812 ohm',
    },
    fix: 'Write > and the ceiling, or correct the ceiling in the condition.',
  },
  'detail-contradicted': {
    meaning:
      'Two details of one condition cannot both be true, such as a check resistor that its own meter cannot read.',
    example: {
      file: 'conditions/metered.yaml',
      wrong: 'meter: { check-resistors: [100 ohm, 900 ohm], ceiling: 850 ohm }',
      right: 'meter: { check-resistors: [100 ohm, 800 ohm], ceiling: 850 ohm }',
      instead: 'meter: { ceiling: 850 ohm }',
    },
    fix: 'Correct one of the two.',
  },
} as const satisfies Readonly<Record<string, Explanation>>

const RESTORE =
  'Restore it from version control or from a backup: what was issued is never changed or deleted.'

/** Codes of what was issued: no record shows them alone, they lie between a record and its document. */
export const OF_ISSUED = {
  'revision-order': {
    meaning:
      'Revisions of a certificate are numbered from 0 in the order of issue, and nothing follows a withdrawal.',
    fix: 'Restore the numbers as they were issued. A withdrawn lot stays withdrawn: record another lot in its place.',
  },
  'issued-missing': {
    meaning: 'The record lists a revision, and the document that was issued for it is not there.',
    fix: RESTORE,
  },
  'issued-altered': {
    meaning:
      'The document is not the one whose digest stands in the record: somebody changed it after it was issued.',
    fix: RESTORE,
  },
  'issued-mismatch': {
    meaning:
      'A line under revisions and its document state different dates, signatories, reasons or numbers.',
    fix: 'Restore the line as it was issued; the document holds it.',
  },
  'issued-part': {
    meaning:
      'Documents share parts under their own digests. One of these is missing, or its bytes are not those of its name.',
    fix: RESTORE,
  },
  'issued-part-unused': {
    meaning: 'A part is left over, mostly by an issue that was interrupted. It does no harm.',
    fix: 'Leave it: the next issue removes it.',
  },
  'issued-unrecorded': {
    meaning:
      'There is a document of a revision that the record does not list, or of a lot that has no record.',
    fix: 'Resume an interrupted issue; otherwise restore the line under revisions, or the lot’s record.',
  },
  'issued-stray': {
    meaning: 'Only issued documents and their parts lie in issued/.',
    fix: 'Put the file elsewhere.',
  },
} as const satisfies Readonly<Record<string, Explanation>>
