/** Clauses on the record in place of a value: facts, allowed classes, sampling. */
import type { Clause, ClauseHead, Frequency, SamplingClause } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import { checkClasses, type CompileContext } from './context.ts'
import { daysOf } from './duration.ts'
import { compilePremises } from './premise.ts'
import type { WrittenClause, WrittenFrequency, WrittenSampling } from './written-criterion.ts'

/** @returns undefined where the clause does not say what the fact must be, with the fault reported */
export function compileFact(
  context: CompileContext,
  { fact, is }: { readonly fact: string; readonly is?: readonly string[] },
  head: ClauseHead,
  pointer: string,
): Clause | undefined {
  if (is !== undefined) return { ...head, form: 'fact', fact, is }
  context.fault(
    pointer,
    'criterion-premise',
    `the clause ${head.id} does not list the allowed values of the fact`,
    'add "is:" with the allowed values',
  )
  return undefined
}

/** Classes as a clause lists them, with where the list stands. */
interface AllowedClasses {
  readonly names: readonly string[]
  readonly pointer: string
  readonly acceptedAs?: { readonly written: WrittenClause['accepted-as']; readonly pointer: string }
}

/** Classes allowed may be those of another set, for a project that buys under several. */
export function compileAllowed(
  context: CompileContext,
  { names, pointer, acceptedAs }: AllowedClasses,
  head: ClauseHead,
): Clause {
  if (context.classes.length > 0) checkClasses(context, names, pointer)
  const accepted = (acceptedAs?.written ?? []).map((entry, index) => {
    const at = below(acceptedAs?.pointer ?? '', index)
    if (!names.includes(entry.as))
      context.fault(
        below(at, 'as'),
        'criterion-class-unknown',
        `class ${entry.as} is not among those allowed`,
        `write one of ${names.join(', ')}`,
      )
    const where = compilePremises(context, entry.when, below(at, 'when'))
    return { class: entry.class, as: entry.as, where }
  })
  return { ...head, form: 'class', allowed: names, acceptedAs: accepted }
}

export function compileSampling(
  context: CompileContext,
  written: WrittenSampling,
  pointer: string,
): Pick<SamplingClause, 'form' | 'properties' | 'every' | 'newSource' | 'sample' | 'duty'> {
  const fresh = written['new-source']
  return {
    form: 'sampling',
    properties: written.properties,
    every: compileFrequency(context, written, pointer),
    ...defined({
      newSource:
        fresh === undefined
          ? undefined
          : {
              ...compileFrequency(context, fresh, below(pointer, 'new-source')),
              newFor: daysOf(fresh.for),
            },
      sample: written.sample,
      duty: written.duty,
    }),
  }
}

function compileFrequency(
  context: CompileContext,
  { every, 'or-every': orEvery }: WrittenFrequency,
  pointer: string,
): Frequency {
  const written = [orEvery?.written, every?.written].filter((text) => text !== undefined).join(' or ')
  if (written === '')
    context.fault(
      pointer,
      'criterion-sampling',
      'the frequency names neither a mass nor a time',
      'add "every:" with a mass, "or-every:" with a time, or both',
    )
  for (const [key, quantity] of [
    ['every', every],
    ['or-every', orEvery],
  ] as const)
    if (quantity !== undefined && !(0 < quantity.value))
      context.fault(
        below(pointer, key),
        'criterion-sampling',
        `a test at least every ${quantity.written} can never be often enough`,
        `write ${key === 'every' ? 'a mass above zero, such as 400 t' : 'a time above zero, such as 30 d'}`,
      )
  return { ...defined({ hours: orEvery?.value, tonnes: every?.value }), written }
}
