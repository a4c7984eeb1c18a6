/**
 * What no study can show, no page of a study says: the list of what is not concluded names it, and nothing else does. So
 * every text of the studies' words, views and components, of their method page and of the limits that rest on them is read
 * for words that such a conclusion would need; a use that denies it is one of the phrases named here.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { NOT_CONCLUDED } from '../../src/words/studies.ts'

const ROOT = resolve(import.meta.dirname, '../..')

/** What such a conclusion would say, by what it would be on. */
const CONCLUDING: Readonly<Record<string, RegExp>> = {
  durability: /\b(?:durab|permeab|expansi|long-lasting|service life|resistant to)\w*/gi,
  'degree of reaction':
    /\b(?:degrees? of (?:reaction|hydration)|(?:has|have|had) reacted|reacted fraction)\b/gi,
  conformity: /\b(?:conform|compli|fit for use|fit for purpose|qualif|suitable|satisf)\w*/gi,
  transfer:
    /\b(?:same (?:result )?(?:at another|in another|elsewhere)|any (?:cement|laboratory|w\/cm)|in general|generally|transferab|always)\w*/gi,
  'inertness between classes':
    /\b(?:between (?:the )?classes is|(?:is|are|proves?|shown) (?:to be )?inert|weak (?:materials? )?(?:is|are) inert)\b/gi,
  cause: /\b(?:because of|caused? by|due to|owing to|thanks to|explains?|explained by|proves?|proven)\b/gi,
  safety:
    /\b(?:safe|safely|safety|reliab\w*|no risk|cannot (?:fail|err)|never (?:passes|fails|errs)|error-free|without error)\b/gi,
}

/** Uses that deny a conclusion or state how a figure is made. */
const DENIALS: readonly RegExp[] = [
  // The section of the method page that lists them.
  /^## What no study here concludes$[\s\S]*?(?=^## |(?![\s\S]))/gm,
  // How many materials a claim would need.
  /\bneeds (?:\d+|\$) materials (?:of a class )?without an error\b/gi,
  // What a proficiency standard calls a laboratory's score.
  /\bSatisfactory up to 2, questionable between 2 and 3, unsatisfactory from 3 on\b/g,
]

function concludedIn(text: string): string[] {
  const rest = [...NOT_CONCLUDED, ...DENIALS].reduce<string>((left, use) => left.replaceAll(use, '…'), text)
  return Object.entries(CONCLUDING).flatMap(([on, words]) =>
    [...rest.matchAll(words)].map(
      ({ 0: word, index }) =>
        `${on}: ${rest.slice(Math.max(0, index - 30), index + word.length + 30).replaceAll(/\s+/g, ' ')}`,
    ),
  )
}

/** Texts of a module with $ for what is filled in; one without a space is a code. */
function textsOf(path: string): string {
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

const asItStands = (path: string) => readFileSync(join(ROOT, path), 'utf8')
/** Markup without its program. */
const markup = (path: string) => asItStands(path).replace(/^---$[\s\S]*?^---$/m, '')

const filesIn = (folder: string) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.\w+$/.test(name))
    .map((name) => `${folder}/${name}`)

const SOURCES: readonly (readonly [string, (path: string) => string])[] = [
  ...[
    ...filesIn('src/words').filter((path) => path.includes('/stud')),
    'src/words/reference-tests.ts',
    'src/words/programme.ts',
    'src/edition/views/study-evidence.ts',
  ].map((path) => [path, textsOf] as const),
  ...filesIn('src/edition/views/studies').map((path) => [path, textsOf] as const),
  ...filesIn('src/components/studies').map((path) => [path, markup] as const),
  ['src/pages/studies/[study]/index.astro', markup],
  ['src/pages/studies/[study]/bench-sheets/index.astro', markup],
  ['src/pages/studies/[study]/calendar/index.astro', markup],
  ['src/pages/studies/index.astro', markup],
  ['content/methods/studies.mdx', asItStands],
]

describe('what no study concludes', () => {
  it('is said by no word, view, component or method page of the studies', () => {
    const found = SOURCES.flatMap(([path, textOf]) =>
      concludedIn(textOf(path)).map((use) => `${path}: ${use}`),
    )
    expect(found).toEqual([])
  })
  it.each([
    ['durability', 'The material is durable.'],
    ['durability', 'A high index means low permeability.'],
    ['degree of reaction', 'Half of the ash has reacted.'],
    ['conformity', 'The lot conforms to the standard.'],
    ['transfer', 'The threshold holds for any cement.'],
    ['inertness between classes', 'A material below the threshold is inert.'],
    ['cause', 'The index is high because of its glass.'],
    ['safety', 'With no errors in six the threshold is safe.'],
    ['safety', 'An inert material never passes.'],
  ])('is found where it is on %s: "%s"', (on, sentence) => {
    expect(
      concludedIn(`None of 6 inert materials pass. ${sentence}`).map((use) => use.split(':')[0]),
    ).toEqual([on])
  })
  it('is denied on every page of a study, each matter by name', () => {
    const denied = NOT_CONCLUDED.join('; ')
    for (const matter of [
      'durability',
      'permeability',
      'expansion',
      'degree of reaction',
      'cause',
      'conformity',
      'another w/cm, curing, cement or laboratory',
      'between the classes is inert',
      'safety from zero errors',
    ])
      expect(denied).toContain(matter)
    expect(markup('src/pages/studies/[study]/index.astro')).toContain('NOT_CONCLUDED.map(')
  })
})
