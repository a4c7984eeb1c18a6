/** Why a clause is not judged for a lot, in words. */
import type { ScopeParams } from '../core/criteria/reason.ts'
import { listWords } from './sentences.ts'
import { premiseReasonWords } from './premises.ts'
import type { WordsOf } from './reason-words.ts'
import type { UnitSystem } from './unit-systems.ts'

export const SCOPE_REASONS: WordsOf<ScopeParams, [units: UnitSystem]> = {
  'no-class-claimed': ({ classes }) =>
    `the limit depends on the class (${listWords(classes, 'or')}), and none is claimed`,
  'class-of-another-set': ({ class: claimed, classes }) =>
    `the claimed class ${claimed} is not a class of this specification (${listWords(classes, 'or')})`,
  'class-not-determined': ({ because }, units) =>
    `the class depends on the material and cannot be determined: ${premiseReasonWords(because, units)}`,
  'class-none-fits': () => 'the material falls into no class of this specification',
  'other-material': () => 'applies to other kinds of material',
  'other-class': ({ class: judged }) => `does not apply to class ${judged}`,
  'not-requested': () => 'optional; not requested by the purchaser',
  'premise-not-met': ({ because }, units) => `applies only where ${premiseReasonWords(because, units)}`,
  'premise-not-determined': ({ because }, units) =>
    `whether it applies depends on ${premiseReasonWords(because, units)}`,
}
