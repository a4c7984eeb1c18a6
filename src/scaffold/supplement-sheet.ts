/** The record of a new specification that rests on another one: what that asks, and how each change is written. */
import {
  type Clause,
  type Comparison,
  type Criterion,
  EVERY_CLASS,
  everyClause,
  partsOfClass,
  setName,
} from '../core/criteria/criterion.ts'
import { clauseSentence } from '../words/clause-sentences.ts'
import { plainSpaces } from '../words/sentences.ts'
import { type NewFile, textOf } from './new-file.ts'
import { schemaLine } from './schema-line.ts'

export interface NewSupplement {
  readonly id: string
  readonly base: Criterion
  /** Classes of the base that it takes over; all without any. */
  readonly classes: readonly string[]
  readonly conditionTitle: (id: string) => string
}

/** Who sets a limit of the new specification. */
const SETTER = 'set-by: { user: "<your organisation>" }'

export function supplementSheet({ id, base, classes, conditionTitle }: NewSupplement): NewFile {
  const path = `criteria/${id}.yaml`
  const list = classes.map((name) => JSON.stringify(name)).join(', ')
  return {
    path,
    text: textOf([
      schemaLine('criterion', path),
      'title: <your specification>',
      'edition: "1"',
      `kinds: [${base.kinds.join(', ')}]`,
      `extends: { set: ${base.id}${classes.length === 0 ? '' : `, classes: [${list}]`} }`,
      'clauses:',
      '  # A first clause that changes nothing: it reports a property for information. Replace it by your own changes.',
      `  - { change: add, clause: reported, property: moisture, report: yes, information: yes, ${SETTER} }`,
      ...commented(['How each change is written; take out "# " in front of what you need.'], '  '),
      ...changeExamples(base, classes).map((line) => `  # ${line}`),
      '',
      ...commented([`What ${setName(base)} asks clause by clause:`], ''),
      ...base.clauses.flatMap((clause) =>
        commented([`${clause.id}: ${clauseSentence(clause, base, conditionTitle)}`], '', '    '),
      ),
    ]),
  }
}

/** One of each, on a clause of the base and with its own limit where it has one that the change goes on from. */
function changeExamples(base: Criterion, classes: readonly string[]): string[] {
  const every = [...everyClause(base.clauses)]
  const limited = every.filter(isLimited)
  const [first] = limited
  const optional = every.find((clause) => clause.optional)
  return [
    ...(first === undefined
      ? []
      : [
          `- { change: tighten, clause: ${first.id}, ${limitText(first, classes)}, ${SETTER} }    # a narrower limit`,
          `- { change: relax, clause: ${first.id}, ${limitText(first, classes)}, ${SETTER} }    # a wider limit`,
          `- { change: replace-method, clause: ${first.id}, method: NAME OF THE METHOD }`,
        ]),
    ...(optional === undefined
      ? []
      : [`- { change: promote, clause: ${optional.id} }    # optional before, judged now`]),
    `- { change: remove, clause: ${every.at(-1)?.id} }`,
    `- { change: add, clause: own-limit, property: MgO, at-most: 5.0 %, ${SETTER} }`,
    ...(base.classes.length === 0
      ? []
      : [`- { change: restrict, classes: [${JSON.stringify(classes[0] ?? base.classes[0])}], ${SETTER} }`]),
    `- { change: add-document, clause: statement, document: certification-statement, ${SETTER} }`,
    `- change: add    # how often a source is tested; change it later with set-frequency`,
    `  clause: sampling-own`,
    `  sampling: { properties: [density], every: 3000 t, or-every: 31 d }`,
    `  ${SETTER}`,
  ]
}

/** A clause with one limit that a change can go on from. */
function isLimited(clause: Clause): clause is Comparison {
  if (clause.form !== 'comparison' || clause.limits.length !== 1) return false
  const [limit] = clause.limits
  return (
    limit !== undefined && ['at-least', 'at-most'].includes(limit.operator) && clause.deviation === undefined
  )
}

/** The limit as the base has it, for the classes that are taken over. */
function limitText({ limits }: Comparison, classes: readonly string[]): string {
  const [limit] = limits
  if (limit === undefined) return ''
  const parts = classes.flatMap(partsOfClass)
  const written = Object.entries(limit.byClass)
    .filter(([name]) => name === EVERY_CLASS || parts.length === 0 || parts.includes(name))
    .map(([name, [quantity]]) => [name, quantity?.written ?? ''] as const)
  const [first] = written
  if (first?.[0] === EVERY_CLASS) return `${limit.operator}: ${first[1]}`
  return `${limit.operator}: { ${written.map(([name, text]) => `${JSON.stringify(name)}: ${text}`).join(', ')} }`
}

const WIDTH = 116

/** Texts as comments, folded at blanks; further lines of one text are set in. */
function commented(texts: readonly string[], indent: string, further = ''): string[] {
  return texts.flatMap((text) => {
    const lines = [`${indent}#`]
    for (const word of plainSpaces(text).split(' ').filter(Boolean)) {
      const line = lines.at(-1) ?? ''
      if (line.length + word.length + 1 <= WIDTH) lines[lines.length - 1] = `${line} ${word}`
      else lines.push(`${indent}#${further} ${word}`)
    }
    return lines
  })
}
