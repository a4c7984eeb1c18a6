/** What the record says of facts, documents, classes and sampling, in words. */
import type { RecordParams, SamplingGap } from '../core/criteria/reason.ts'
import { date } from './dates.ts'
import { numberWords } from './numbers.ts'
import { listWords } from './sentences.ts'
import { factWords, premiseReasonWords, statedPremisesWords } from './premises.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'
import type { UnitSystem } from './unit-systems.ts'

export const RECORD_REASONS: WordsOf<RecordParams, [units: UnitSystem]> = {
  'fact-not-stated': ({ fact }) => `${factWords(fact)} is not stated`,
  'fact-stated': ({ fact, stated }) => `${factWords(fact)} is ${stated}`,
  'fact-not-allowed': ({ fact, stated, is }) =>
    `${factWords(fact)} is ${stated} but must be ${listWords(is, 'or')}`,
  'no-document': ({ document: kind }) => `no ${factWords(kind)} is on record`,
  'document-not-in-force': ({ document: kind, on }) => `no ${factWords(kind)} is in force on ${date(on)}`,
  'document-void': ({ document: kind, since, event }) =>
    `${factWords(kind)} has been void since ${date(since)}: ${event}`,
  'document-on-record': ({ document: kind, standing }) =>
    `${factWords(kind)} on record: ${'title' in standing ? standing.title : `${standing.scope}, by ${standing.by}`}`,
  'class-not-claimed': ({ allowed }) => `no class is claimed; it must be ${listWords(allowed, 'or')}`,
  'class-allowed': ({ class: claimed }) => `class ${claimed} is allowed`,
  'class-not-allowed': ({ class: claimed, allowed }) =>
    `class ${claimed} is not allowed, only ${listWords(allowed, 'or')}`,
  'class-acceptance-not-determined': ({ class: claimed, as, because }, units) =>
    `whether class ${claimed} is accepted as ${as} depends on ${premiseReasonWords(because, units)}`,
  'class-not-accepted': ({ class: claimed, as, where }) =>
    `class ${claimed} is not allowed; it is accepted as ${as} only where ${statedPremisesWords(where)}`,
  'class-accepted': ({ class: claimed, as, where }) =>
    `class ${claimed} accepted as ${as}, since ${statedPremisesWords(where)}`,
  'sampling-not-known': () => 'the production and sampling of the source are not known here',
  'sampled-often-enough': ({ every, newSource }) => `tested at least every ${every}${forNew(newSource)}`,
  'sampled-too-seldom': ({ gaps, every, newSource }, units) =>
    `${gaps.map((gap) => `${propertyWords(gap)}: ${gapWords(gap, units)}`).join('; ')}; a test is due every ${every}${forNew(newSource)}`,
}

function forNew(newSource: boolean): string {
  return newSource ? ' for a new source' : ''
}

function gapWords({ hours, tonnes, tests, since }: SamplingGap, units: UnitSystem): string {
  const amount = `${numberWords(hours / 24, 1, 'd')} and ${numberWords(tonnes, 0, 't', units)}`
  const from = since === undefined ? 'since the source’s records began' : `since the test of ${since}`
  if (tests === 0) return `no test in ${amount} ${from}`
  return `${tests === 1 ? 'one test' : `${tests} tests`} in ${amount} ${from}`
}
