/**
 * What a clause demands, in words, apart from its title and where it comes from: for sentences and for what a
 * supplement changed.
 */
import {
  type Clause,
  type Comparison,
  isOwnPremise,
  type PropertyPremise,
} from '../core/criteria/criterion.ts'
import { limitsByClass } from './limits.ts'
import { listWords } from './sentences.ts'
import { factWords, premisesWords } from './premises.ts'
import { property } from '../core/measure/properties.ts'
import { propertyWords } from './property-names.ts'
import { toSignificant } from '../core/measure/rounding.ts'

export function bandsInWords({
  bands = [],
  ...own
}: Pick<Comparison, 'bands' | 'property' | 'condition' | 'age'>): string {
  return bands
    .map(
      (band) =>
        `${band.title} where ${listWords(
          band.where.map(
            (premise) =>
              `${isOwnPremise(premise, own) ? 'it' : agedProperty(premise)} is ${limitsByClass(premise.limits)}`,
          ),
          'and',
        )}`,
    )
    .join('; ')
}

function agedProperty({ property: key, age }: PropertyPremise): string {
  return `${propertyWords({ property: key })}${age === undefined ? '' : ` at ${age.text}`}`
}

/** What of a property the limit is held against. */
export function statisticSubject({ statistic, ...clause }: Comparison, title: string): string {
  switch (statistic?.of) {
    case 'rolling-mean':
      return `the mean of the last ${statistic.count} results for ${title}`
    case 'variables': {
      const lower = clause.limits.some((limit) => limit.operator === 'at-least' || limit.operator === 'above')
      return `the mean of ${title} over ${statistic.days} d ${lower ? 'less' : 'plus'} the tolerance factor (share ${percent(statistic.share)}, confidence ${percent(statistic.confidence)}) times the standard deviation, from at least ${statistic.atLeast} results`
    }
    case 'attributes':
      return `all results for ${title} over ${statistic.days} d, except an allowed number (${statistic.acceptance.map(({ from, allow }) => `${allow} of ${from} or more`).join(', ')}${statistic.beyond === undefined ? '' : `; beyond that ${statistic.beyond.factor} times the number less ${statistic.beyond.less}`}),`
    case 'tolerance':
      return `for at least ${percent(statistic.share)} of results, as estimated from the last ${statistic.count} (at least ${statistic.atLeast}), ${title}`
    case 'declared':
      return `the declared value of ${title}`
    default:
      return title
  }
}

function percent(share: number): string {
  return `${toSignificant(100 * share, 6)} %`
}

/** The demand of any clause; of a group, its members'. */
export function demandWords(clause: Clause): string {
  switch (clause.form) {
    case 'group':
      return clause.members.map(demandWords).join(clause.combine === 'any-of' ? ' or ' : ' and ')
    case 'comparison':
      return comparisonDemand(clause)
    case 'fact':
      return `${factWords(clause.fact)} must be ${listWords(clause.is, 'or')}`
    case 'document':
      return `the document ${factWords(clause.document)} must be on record and in force${
        clause.voidOn.length === 0
          ? ''
          : `; void after ${listWords(
              clause.voidOn.map(
                (kind) => `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind.replaceAll('-', ' ')}`,
              ),
              'or',
            )}`
      }`
    case 'class':
      return `the class must be ${listWords(clause.allowed, 'or')}${clause.acceptedAs.map((entry) => `; class ${entry.class} is accepted as ${entry.as} where ${premisesWords(entry.where, limitsByClass)}`).join('')}`
    case 'sampling':
      return `${listWords(
        clause.properties.map((key) => propertyWords({ property: key })),
        'and',
      )} must be tested${clause.sample === undefined ? '' : ` on a ${clause.sample} sample`}${clause.duty === undefined ? '' : ` that serves as a ${clause.duty} one`} at least every ${clause.every.written}, whichever comes first${clause.newSource === undefined ? '' : `; every ${clause.newSource.written} for a source with less than ${clause.newSource.newFor} d of records`}`
  }
}

function comparisonDemand(clause: Comparison): string {
  const optional = clause.optional ? ', optional' : clause.information ? ', for information' : ''
  const method = clause.method === undefined ? '' : `, by ${clause.method}`
  if (clause.bands !== undefined) return `${property(clause.property).title} classified`
  const limits = limitsByClass(clause.limits)
  return `${limits === '' ? 'to be reported' : limits}${method}${optional}`
}
