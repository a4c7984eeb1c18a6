/** Why a clause is not judged for a lot, in words. */
import type { ScopeParams } from '../core/criteria/reason.ts'
import { listWords } from './sentences.ts'
import { premiseReasonWords } from './premises.ts'
import type { WordsOf } from './reason-words.ts'

export const SCOPE_REASONS: WordsOf<ScopeParams> = {
  'no-class-claimed': ({ classes }) =>
    `no class claimed, and the limit depends on it (${listWords(classes, 'or')})`,
  'class-of-another-set': ({ class: claimed, classes }) =>
    `the claimed class ${claimed} is none of this set's (${listWords(classes, 'or')})`,
  'class-not-determined': ({ because }) =>
    `the class follows from the material and cannot be decided: ${premiseReasonWords(because)}`,
  'class-none-fits': () => 'the material falls into no class of this set',
  'other-material': () => 'for other kinds of material',
  'other-class': ({ class: judged }) => `not for class ${judged}`,
  'not-requested': () => 'optional, not asked for by the purchaser',
  'premise-not-met': ({ because }) => `applies only where ${premiseReasonWords(because)}`,
  'premise-not-determined': ({ because }) => `applies by ${premiseReasonWords(because)}`,
}
