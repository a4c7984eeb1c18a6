/** A set as data/criteria.json holds it: the texts of its ages and dates are read once. */
import { readAge } from '../measure/age.ts'
import { defined } from '../measure/defined.ts'
import { readMoment } from '../measure/moment.ts'
import type { WithTexts } from '../measure/texts-of-times.ts'
import type {
  Band,
  Clause,
  ClauseChange,
  ClauseHead,
  Comparison,
  Criterion,
  Layer,
  Premise,
} from './criterion.ts'

/**
 * Reads the ages and dates of a set.
 * @throws RangeError for a text that is no age or date
 */
export function readCriterion(file: WithTexts<Criterion>): Criterion {
  return defined({
    ...file,
    classFrom: file.classFrom?.map((entry) => ({ ...entry, where: entry.where.map(readPremise) })),
    clauses: file.clauses.map(readClause),
    release: file.release.map(readAged),
    layers: file.layers.map(readLayer),
    removed: file.removed.map((removed) => ({ ...removed, former: readClause(removed.former) })),
  })
}

function readClause(file: WithTexts<Clause>): Clause {
  switch (file.form) {
    case 'comparison':
      return readComparison(file)
    case 'group':
      return { ...readHead(file), members: file.members.map(readClause) }
    case 'class':
      return {
        ...readHead(file),
        acceptedAs: file.acceptedAs.map((entry) => ({ ...entry, where: entry.where.map(readPremise) })),
      }
    case 'fact':
      return readHead(file)
    case 'document':
      return readHead(file)
    case 'sampling':
      return readHead(file)
  }
}

/** What every clause has; the rest as it is. */
function readHead<File extends WithTexts<ClauseHead>>({
  when,
  changes,
  setBy,
  ...clause
}: File): Omit<File, 'when' | 'changes' | 'setBy'> & Pick<ClauseHead, 'when' | 'changes' | 'setBy'> {
  return {
    ...clause,
    ...defined({
      when: when?.map(readPremise),
      changes: changes?.map(readChange),
      setBy: setBy === undefined ? undefined : readAged(setBy),
    }),
  }
}

function readComparison({ bands, deemedBy, ...file }: WithTexts<Comparison>): Comparison {
  return {
    ...readAged(readHead(file)),
    ...defined({ bands: bands?.map(readBand), deemedBy: deemedBy?.map(readPremise) }),
  }
}

function readChange(file: WithTexts<ClauseChange>): ClauseChange {
  return { ...file, former: readClause(file.former) }
}

function readBand(file: WithTexts<Band>): Band {
  return { ...file, where: file.where.map(readAged) }
}

function readPremise(file: WithTexts<Premise>): Premise {
  return 'fact' in file ? file : readAged(file)
}

function readLayer({ confirmed, ...layer }: WithTexts<Layer>): Layer {
  return confirmed === undefined
    ? layer
    : { ...layer, confirmed: { ...confirmed, date: readMoment(confirmed.date) } }
}

function readAged<T extends { readonly age?: string }>({ age, ...rest }: T) {
  return { ...rest, ...defined({ age: age === undefined ? undefined : readAge(age) }) }
}
