import type { Explanation } from './explanation.ts'

const LOT = 'lots/tuff/T-1.yaml'

/** Codes of files, their names, and of the text before it is a record. */
export const OF_FILES = {
  'file-unreadable': {
    meaning:
      'A record is a text file in UTF-8 of at most 4 MiB. This one cannot be opened, is something else, such as a picture or a pipe, or was saved in another encoding.',
    fix: 'Check the permissions, or save the file again as UTF-8 in your editor. A photograph or a spreadsheet belongs elsewhere.',
  },
  'file-unexpected': {
    meaning:
      'Every file of a content folder has its place: lots in lots/SOURCE/LOT.yaml, other records in the folder of their kind. A file elsewhere is not read, and a record that is not read must not go unnoticed. Links out of the folder are not followed.',
    example: { copied: LOT, wrong: 'lots/tuff/T-2.yml', right: 'lots/tuff/T-2.yaml' },
    fix: 'Rename or move the file; put the file itself where a link stands.',
  },
  'file-missing': {
    meaning: 'Without site.yaml nothing says which specification governs, so no lot can be judged.',
    fix: 'Write site.yaml with title, units, criteria and grace.',
  },
  'format-newer': {
    meaning:
      'The site says under format that its records were written for a later version of the program, to which what seems a fault here may be none. Nothing else of the folder is read.',
    example: { file: 'site.yaml', wrong: 'format: 99', right: 'format: 1' },
    fix: 'Install the later version of the program.',
  },
  'id-invalid': {
    meaning:
      'The name of a file is the id of its record, which stands in addresses and in references. It holds letters, digits and hyphens, at most 64 of them, and is no name that an operating system or the site keeps for itself.',
    example: { copied: LOT, wrong: 'lots/tuff/T 2.yaml', right: 'lots/tuff/T-2.yaml' },
    fix: 'Rename the file. Where the printed number of a lot holds other signs, write it in the record as number.',
  },
  'id-case': {
    meaning:
      'Two names that differ only by capital letters are one file on some computers and one address on many servers.',
    example: { copied: 'producers/hill.yaml', wrong: 'producers/Hill.yaml', right: 'producers/moor.yaml' },
    fix: 'Rename one of the two.',
  },
  'yaml-syntax': {
    meaning:
      'The file cannot be read as YAML. Often a colon lacks the blank after it, a bracket or a quote is not closed, a line is indented differently from its neighbours, or a tab stands where spaces are needed. The parser stops at the first such place, which may be a line after the cause.',
    example: { file: LOT, wrong: 'samples: [', right: 'samples:' },
    fix: 'Look at the line that is shown and at the one above it.',
  },
  'conflict-marker': {
    meaning:
      'Version control could not merge two changes of the same lines. It left both in the file, between the marks <<<<<<<, ======= and >>>>>>>.',
    example: {
      file: LOT,
      wrong: '<<<<<<< HEAD\nquantity: 1450 t\n=======\nquantity: 1540 t\n>>>>>>> weighbridge',
      right: 'quantity: 1450 t',
    },
    fix: 'Keep the lines that are right and remove the others together with the three marks.',
  },
  'yaml-alias': {
    meaning:
      'YAML lets *name stand for what &name marks elsewhere. Records write everything out, so that each can be read line by line.',
    example: { file: LOT, wrong: 'quantity: *usual', right: 'quantity: 1450 t' },
    fix: 'Write the value out. A text that begins with * goes in quotes.',
  },
  'yaml-duplicate-key': {
    meaning: 'A key stands twice in one mapping, and nothing says which of the two values counts.',
    example: { file: LOT, wrong: 'quantity: 1450 t\nquantity: 1540 t', right: 'quantity: 1450 t' },
    fix: 'Keep one of the two. Several things of one kind go in a list.',
  },
  'yaml-forbidden-key': {
    meaning: 'A few names, such as __proto__, mean something to the language that the program is written in.',
    example: {
      file: LOT,
      wrong: 'specimens: { constructor: 78.4 kN,',
      right: 'specimens: { a: 78.4 kN,',
    },
    fix: 'Choose another name.',
  },
  'yaml-comma-split': {
    meaning:
      'Within { } a comma ends the entry. A number with a decimal comma, or with commas between its thousands, is cut in two there.',
    example: { file: LOT, wrong: 'mass: 24,8 t', right: 'mass: 24.8 t' },
    fix: 'Write a decimal point and no sign between thousands.',
  },
  'yaml-block-mark': {
    meaning: 'A value that begins with > or | opens block text in YAML.',
    example: { file: LOT, wrong: 'quantity: > 1450 t', right: 'quantity: 1450 t' },
    fix: 'Write the value read; put a text in quotes. A result below a bound is written < 0.1 %.',
  },
  'yaml-empty': {
    meaning: 'A key has no value, or a file holds no record. Left open, it would be read as nothing at all.',
    example: { file: LOT, wrong: 'quantity:', right: 'quantity: 1450 t' },
    fix: 'Write the value, or remove the line.',
  },
  'method-program': {
    meaning:
      'A method page is text with headings, lists, tables and links. Program code, tags and braces could run in the reader’s browser.',
    example: { file: 'methods/about.mdx', wrong: 'The sum is {1 + 1}.', right: 'The sum is 1 + 1.' },
    fix: 'Write it in words, or show it in a code block.',
  },
  'method-link': {
    meaning:
      'A link of a method page may lead into the site, to https:, http: or mailto:; a picture lies within the site.',
    example: {
      file: 'methods/about.mdx',
      wrong: 'See the [plan](javascript:alert).',
      right: 'See the [plan](https://example.org/plan).',
    },
    fix: 'Write the full address, or a path within the site.',
  },
} as const satisfies Readonly<Record<string, Explanation>>
