import type { Explanation } from './explanation.ts'

/** The examples are of one sheet, named March, of the residue on a sieve. */
const HEADINGS = 'Lot;Tested;R45\n'
const RIGHT = `${HEADINGS}T-1;2026-03-10;8.4`

/** Codes of what an import says of a spreadsheet and its map. */
export const OF_IMPORTS = {
  'import-sheet': {
    meaning:
      'Each table of the map is read from a sheet. The file has no sheet of that name, or it has one that no table reads, and what stands there must not go unnoticed.',
    example: { of: 'map', wrong: 'sheet: Mrach', right: 'sheet: March' },
    fix: 'Write the name of the sheet as its tab shows it; name a sheet that is not wanted under not-read.',
  },
  'import-hidden': {
    meaning:
      'A hidden sheet is left out unless the map names it in full: mostly it holds lists or a draft, which nobody sees to correct. Hidden rows and columns are read like any others, since a filter that was left on would lose lots. Either is said, and stops nothing.',
    fix: 'Show them in the spreadsheet and look. Name a hidden sheet under sheet or not-read; leave rows out under except or rows, and a column by ignore.',
  },
  'import-heading': {
    meaning:
      'The map says of every column what it gives, or that it is ignored. A heading that the map does not name, or one that it names and the sheet has not, would lose a column.',
    example: { of: 'sheet', wrong: 'Lot;Tested;R45;Colour\nT-1;2026-03-10;8.4;grey', right: RIGHT },
    fix: 'Write the heading in the map as it stands in the sheet, with what the column gives, or ignore.',
  },
  'import-cell': {
    meaning:
      'It has a comma where the map says that decimals have a point, a date whose day and month could be exchanged, an error of the spreadsheet, a word where a number belongs. Nothing is guessed, and no row is dropped.',
    example: { of: 'sheet', wrong: `${HEADINGS}T-1;2026-03-10;8,4`, right: RIGHT },
    fix: 'Correct the cell where it is wrong, or the map where the whole column is written so: under numbers, dates, unit, blank or stands-for.',
  },
  'import-row': {
    meaning:
      'A row does not say enough to find its place in a record: its lot, sample, laboratory or date stands in no cell, and the map does not give it for all rows. Often it is a row of totals, or the lot stands in the merged cell above.',
    example: { of: 'sheet', wrong: `${HEADINGS};2026-03-10;8.4`, right: RIGHT },
    fix: 'Fill the cell, give what holds for all rows under every, repeat a merged cell by fill: down, or leave the row out under except.',
  },
  'import-twice': {
    meaning:
      'They speak of the same record, sample and day. Which one counts cannot be told: the second is not taken for a correction.',
    example: { of: 'sheet', wrong: `${RIGHT}\nT-1;2026-03-10;8.9`, right: RIGHT },
    fix: 'Correct one of the two, or give a repeated test the date of its own.',
  },
  'import-differs': {
    meaning:
      'The record has this value already, and the file states another. In the example the record says 8.4 %. A value on record is never overwritten in silence.',
    example: { of: 'sheet', wrong: `${HEADINGS}T-1;2026-03-10;8.9`, right: RIGHT },
    fix: 'Correct whichever of the two is wrong. Where the file is right throughout, import it with --replace.',
  },
  'import-record': {
    meaning:
      'Each cell could be read, and the record that they make together has a fault, whose own code stands in brackets behind it. The message names the cell that it comes from. No record of the file is written.',
    example: { of: 'sheet', wrong: `${HEADINGS}T-1;2026-03-12;130`, right: `${HEADINGS}T-1;2026-03-12;13.0` },
    fix: 'Correct the cell that is named, as the fault’s own code says.',
  },
} as const satisfies Readonly<Record<string, Explanation>>
