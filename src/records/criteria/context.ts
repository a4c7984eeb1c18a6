/** What the compiling of one criterion carries along: where it is in the record, and how it reports. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { below } from '../yaml/pointer.ts'
import { shortened } from '../schema/schema-words.ts'
import type { CriterionCode } from '../diagnostics/criterion-codes.ts'

export interface CompileFault {
  readonly code: CriterionCode
  readonly message: string
  readonly mend: string
}

/**
 * Ids of the other records that a set may name. `base` gives a compiled set, or why there is none: it has faults
 * of its own, or leads back here.
 */
export interface OtherRecords {
  readonly conditions: ReadonlySet<string>
  readonly criteria: ReadonlySet<string>
  readonly base: (id: string) => Criterion | 'faulty' | 'cycle'
}

export interface CompileContext {
  /** Id of the set. */
  readonly id: string
  readonly classes: readonly string[]
  /** Categories of every axis; a limit may be by category. */
  readonly categories: readonly string[]
  readonly others: OtherRecords
  fault(pointer: string, code: CriterionCode, message: string, mend: string): void
}

/** A context that counts its faults, since a set with one is not judged by. */
export function compileContext(
  id: string,
  classes: readonly string[],
  others: OtherRecords,
  report: (pointer: string, fault: CompileFault) => void,
): CompileContext & { faults(): number } {
  let count = 0
  return {
    id,
    classes,
    categories: [...new Set(classes.flatMap((name) => name.split('/')))],
    others,
    fault: (pointer, code, message, mend) => {
      count += 1
      report(pointer, { code, message, mend })
    },
    faults: () => count,
  }
}

/** Reports every class of a list that the set does not have. @param pointer of the list */
export function checkClasses(context: CompileContext, classes: readonly string[], pointer: string): void {
  classes.forEach((name, index) => {
    checkClass(context, name, below(pointer, index))
  })
}

/** Reports a class that the set does not have, where it is named. */
export function checkClass(context: CompileContext, name: string, pointer: string): void {
  if (context.classes.includes(name) || context.categories.includes(name)) return
  context.fault(
    pointer,
    'criterion-class-unknown',
    `the specification has no class "${shortened(name)}"`,
    classMend(context),
  )
}

function classMend({ classes }: CompileContext): string {
  return classes.length === 0
    ? 'list the classes of the specification under "classes", or write one limit for all'
    : `write one of the classes of the specification: ${classes.join(', ')}`
}
