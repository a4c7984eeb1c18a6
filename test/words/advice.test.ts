/**
 * The program reports outcomes; what follows from them is a matter of the contract. So no text that a page or a
 * message prints uses accept, reject, suspend or approve as advice: every use is one of the phrases named here.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { load } from 'js-yaml'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../..')

/** Words that tell an owner or an agency what to do with a lot or a source. */
const ADVISING = /\b(?:accept|reject|suspend|approv|disapprov)\w*/gi

/** Uses that state what a specification, a record or a party does, each with what it is. */
const STATEMENTS: readonly RegExp[] = [
  // An outcome, and what it rests on: an approval that is on record.
  /\bby approval\b/gi,
  /\b(?:needs an|relaxed\s+by\s+an|no)\s+approval\s+(?:on evidence|on record|is on record|is in the record)\b/gi,
  /\bapproved by \$ from \$ on evidence\b/gi,
  /\bapproval of (?:\$ from|the source, void)\b/gi,
  // What the record says of an agency's list.
  /\bwhile it was suspended by \$, since \$/gi,
  /\bwhile no approval (?:of the source )?was on record\b/gi,
  /\bwhile the source was suspended by \$, since \$/gi,
  /\bafter the approval of the source had ended on \$/gi,
  /\bafter its approval had ended on \$/gi,
  // Trade terms.
  /\bacceptance (?:criteria|numbers?)\b/gi,
  // Who decides, and that a verdict is not it.
  /\bfinal acceptance (?:always )?rests with the governing specification\b/gi,
  /\ba verdict here is not\s+their approval\b/gi,
  /\bneither rejects nor rescues\b/gi,
  // What a specification says of classes, and what its user does with evidence.
  /\bis accepted as\b/gi,
  /\bclass (?:\$|C) accepted as\b/gi,
  /\blaboratory results that the user accepts\b/gi,
  // The chance that a lot on the limit meets it.
  /\btrue value lies on a limit is accepted in\b/gi,
]

/** Uses of the words that are none of the statements, each with what stands around it. */
function adviceIn(text: string): string[] {
  const rest = STATEMENTS.reduce((left, phrase) => left.replaceAll(phrase, '…'), text)
  return [...rest.matchAll(ADVISING)].map(({ 0: word, index }) =>
    rest.slice(Math.max(0, index - 30), index + word.length + 30).replaceAll(/\s+/g, ' '),
  )
}

/** Markdown as it is read: without code, where options such as `--accept` stand. */
function prose(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8')
    .replaceAll(/^ {4}\S.*$/gm, '')
    .replaceAll(/`[^`]*`/g, '')
}

/** The words of a module: its texts, with $ for what is filled in; a text without a space is a code. */
function wordsOf(path: string): string {
  const texts: string[] = []
  const file = ts.createSourceFile(path, readFileSync(join(ROOT, path), 'utf8'), ts.ScriptTarget.Latest)
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node)) texts.push(node.text)
    if (ts.isTemplateExpression(node))
      texts.push([node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join('$'))
    ts.forEachChild(node, visit)
  }
  visit(file)
  return texts.filter((text) => text.includes(' ')).join('\n')
}

/** Members of criteria and conditions that a page prints as they stand. */
const PRINTED = ['title', 'note', 'lacks', 'retests', 'evidence', 'class-titles', 'memory', 'read']

function recordTexts(path: string): string {
  const texts: string[] = []
  const visit = (value: unknown, isPrinted: boolean): void => {
    if (typeof value === 'string' && isPrinted) texts.push(value)
    if (typeof value !== 'object' || value === null) return
    for (const [key, member] of Object.entries(value))
      visit(member, PRINTED.includes(key) || (isPrinted && typeof member === 'string'))
  }
  visit(load(readFileSync(join(ROOT, path), 'utf8')), false)
  return texts.join('\n')
}

const filesIn = (folder: string) => readdirSync(join(ROOT, folder)).map((name) => `${folder}/${name}`)

const SOURCES: readonly (readonly [string, (path: string) => string])[] = [
  ...['README.md', ...filesIn('content/methods')].map((path) => [path, prose] as const),
  ...filesIn('src/words').map((path) => [path, wordsOf] as const),
  ...[...filesIn('content/criteria'), ...filesIn('content/conditions')].map(
    (path) => [path, recordTexts] as const,
  ),
]

describe('advice', () => {
  it('is given by no method page, README, sentence, criterion or condition', () => {
    const found = SOURCES.flatMap(([path, textOf]) => adviceIn(textOf(path)).map((use) => `${path}: ${use}`))
    expect(found).toEqual([])
  })
  it.each([
    'A result below the limit is a reason to reject the lot.',
    'Reject the lot.',
    'The source should be suspended until it is tested again.',
    'This lot can be accepted.',
    'The agency may approve the source.',
    'Acceptance of the lot is recommended.',
  ])('is found in "%s"', (sentence) => {
    expect(adviceIn(`It meets by approval. ${sentence}`)).toHaveLength(1)
  })
  it('is looked for where the words do stand: each kind of file uses one in a statement', () => {
    const used = SOURCES.filter(([path, textOf]) => textOf(path).search(ADVISING) !== -1).map(([path]) =>
      path.replace(/\/[^/]*$/, ''),
    )
    expect(new Set(used)).toEqual(new Set(['README.md', 'content/methods', 'src/words', 'content/criteria']))
  })
})
