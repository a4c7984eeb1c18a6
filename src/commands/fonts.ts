/**
 * npm run fonts: writes src/styles/fonts/, the small font files, and the style sheet that names them; --check tells
 * whether they are stale.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { FACES, type Face, type Part, PARTS, subsetOf, unicodeRange } from './font-faces.ts'
import { command, EXIT, ROOT, run } from './program.ts'

const HEAD = `/*
 * Written by npm run fonts (src/commands/fonts.ts). Each face has three files: a small one with English letters and
 * the signs of the trade, one with rarer letters, and the complete font; each is fetched only where a page prints a
 * letter from it. Static files, since variable ones become outlines in a PDF.
 * A letter never moves once it is drawn: text that comes late waits for the next page (optional), and until then a
 * font of the machine stands in with the same measures. size-adjust is the ratio of the mean widths of a text of
 * this site, ascent-override and descent-override are the font's own hhea over that ratio; a test recomputes them
 * from the fonts' tables and from the widths of Arimo and Tinos, which are those of Arial and Times New Roman.
 */
`

await run(async () => {
  const options = command('fonts', 'Write the small font files and their style sheet.')
    .option('--check', 'write nothing; exit 1 when a file is stale')
    .parse()
    .opts<{ check?: boolean }>()
  const stale: string[] = []
  for (const [path, bytes] of await files()) {
    const file = resolve(ROOT, 'src/styles', path)
    if (existsSync(file) && readFileSync(file).equals(bytes)) continue
    stale.push(path)
    if (options.check === true) continue
    mkdirSync(dirname(file), { recursive: true })
    writeFileSync(file, bytes)
  }
  for (const path of stale) process.stdout.write(`${options.check === true ? 'stale' : 'written'}: ${path}\n`)
  return options.check === true && stale.length > 0 ? EXIT.failed : EXIT.well
})

/** All that is written, by its path below src/styles. */
async function files(): Promise<Map<string, Buffer>> {
  const made = new Map<string, Buffer>([['fonts.css', Buffer.from(HEAD + FACES.flatMap(rules).join(''))]])
  for (const face of FACES)
    for (const part of PARTS) made.set(`fonts/${face.name}-${part}.woff2`, await subsetOf(face, part))
  return made
}

function rules(face: Face): string[] {
  const { family, weight, style, standIn } = face
  const kind = `font-weight: ${weight}; font-style: ${style};`
  const rule = (part: Part | 'others', path: string, display: string) =>
    `@font-face { font-family: "${family}"; ${kind} font-display: ${display}; ` +
    `src: url("${path}") format("woff2"); unicode-range: ${unicodeRange(part)}; }\n`
  return [
    rule('text', `fonts/${face.name}-text.woff2`, 'optional'),
    rule('further', `fonts/${face.name}-further.woff2`, 'fallback'),
    rule('others', face.whole, 'fallback'),
    `@font-face { font-family: "${family} stand-in"; ${kind} ` +
      `src: ${standIn.fonts.map((font) => `local("${font}")`).join(', ')}; size-adjust: ${standIn.size}%; ` +
      `ascent-override: ${standIn.ascent}%; descent-override: ${standIn.descent}%; line-gap-override: 0%; }\n`,
  ]
}
