/** Blanks that look like a space and are none to YAML: pasted from a page or a word processor. */
import type { FileReport } from '../diagnostics/report.ts'

const NAMES: Readonly<Record<string, string>> = {
  '\u00a0': 'a no-break space',
  '\u2007': 'a figure space',
  '\u202f': 'a narrow no-break space',
  '\u3000': 'an ideographic space',
  '\u200b': 'a space without width',
  '\u2060': 'a joiner without width',
  '\ufeff': 'a byte order mark',
}
const BLANK = new RegExp(`[${Object.keys(NAMES).join('')}]`)

/** Where a space has a meaning: in the indentation, after a dash, after the colon of a key. */
const STRUCTURAL = new RegExp(String.raw`^(?:[ \t]*(?:- +)*-?|.*?(?:^|[\s{,])[\w-]+:)(?=${BLANK.source})`)

const MEND = 'write a plain space in its place, or take it out'

/** The first such blank of a text in words, U+00A0 first; undefined where there is none. */
export function strangeBlankIn(text: string): string | undefined {
  const [sign] = BLANK.exec(text) ?? []
  return sign === undefined ? undefined : inWords(sign)
}

/** Reports a text or a key that holds such a blank where YAML or the schema would have none. */
export function strangeBlankFault(text: string): ['text-character', string, string] | undefined {
  const blank = strangeBlankIn(text)
  return blank === undefined ? undefined : ['text-character', `the text holds ${blank}`, MEND]
}

/** Reports the first such blank of each line where a space has a meaning; whether there was one. */
export function reportStrangeBlanks(text: string, report: FileReport): boolean {
  if (!BLANK.test(text)) return false
  let found = false
  text.split('\n').forEach((line, index) => {
    const [before] = STRUCTURAL.exec(line) ?? []
    // A byte order mark may begin a file.
    if (before === undefined || (index === 0 && before === '' && line.startsWith('\ufeff'))) return
    found = true
    const message = `${inWords(line[before.length] ?? '')} stands here, which YAML does not take for a space`
    report.atPosition(index + 1, before.length + 1, 'text-character', message, MEND)
  })
  return found
}

function inWords(sign: string): string {
  const code = sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')
  return `U+${code}, ${NAMES[sign] ?? 'a blank'}`
}
