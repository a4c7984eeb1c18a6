/** What the tables for spreadsheets say of their own cells. */

/** For whoever reads such a file by a program. */
export const TEXT_GUARD =
  'A text that begins with =, +, - or @ has an apostrophe before it, which keeps a spreadsheet from computing it; a mere figure such as -0.01 % has none.'
