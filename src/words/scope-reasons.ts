/** Why a clause is not judged for a lot, in words. */
import type { ScopeParams } from '../core/criteria/reason.ts'
import { listWords } from './sentences.ts'
import { premiseReasonWords } from './premises.ts'
import type { WordsOf } from './reason-words.ts'
import type { UnitSystem } from './unit-systems.ts'

export const SCOPE_REASONS: WordsOf<ScopeParams, [units: UnitSystem]> = {
  'no-class-claimed': ({ classes }) =>
    `no class claimed, and the limit depends on it (${listWords(classes, 'or')})`,
  'class-of-another-set': ({ class: claimed, classes }) =>
    `the claimed class ${claimed} is none of this set's (${listWords(classes, 'or')})`,
  'class-not-determined': ({ because }, units) =>
    `the class follows from the material and cannot be decided: ${premiseReasonWords(because, units)}`,
  'class-none-fits': () => 'the material falls into no class of this set',
  'other-material': () => 'for other kinds of material',
  'other-class': ({ class: judged }) => `not for class ${judged}`,
  'not-requested': () => 'optional, not asked for by the purchaser',
  'premise-not-met': ({ because }, units) => `applies only where ${premiseReasonWords(because, units)}`,
  'premise-not-determined': ({ because }, units) => `applies by ${premiseReasonWords(because, units)}`,
}
