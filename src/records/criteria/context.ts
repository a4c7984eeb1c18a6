/** What the compiling of one criterion carries along: where it is in the record, and how it reports. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { CriterionCode } from './codes.ts'

export interface CompileFault {
  readonly code: string
  readonly message: string
  readonly mend: string
}

/**
 * What the compiling knows of other records. `base` gives a compiled set, or why there is none: it has faults
 * of its own, or leads back here.
 */
export interface KnownRecords {
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
  readonly known: KnownRecords
  fault(pointer: string, code: CriterionCode, message: string, mend: string): void
}

/** A context that counts its faults, since a set with one is not judged by. */
export function compileContext(
  id: string,
  classes: readonly string[],
  known: KnownRecords,
  report: (pointer: string, fault: CompileFault) => void,
): CompileContext & { faults(): number } {
  let count = 0
  return {
    id,
    classes,
    categories: [...new Set(classes.flatMap((name) => name.split('/')))],
    known,
    fault: (pointer, code, message, mend) => {
      count += 1
      report(pointer, { code, message, mend })
    },
    faults: () => count,
  }
}

/** JSON pointer to a member. */
export function below(pointer: string, key: string | number): string {
  return `${pointer}/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`
}

/** Reports every class of a list that the set does not have. */
export function checkClasses(
  context: CompileContext,
  classes: readonly string[],
  pointer: (index: number, name: string) => string,
): void {
  classes.forEach((name, index) => {
    if (!context.classes.includes(name) && !context.categories.includes(name))
      context.fault(
        pointer(index, name),
        'criterion-class-unknown',
        `the set has no class "${name}"`,
        classMend(context),
      )
  })
}

function classMend({ classes }: CompileContext): string {
  return classes.length === 0
    ? 'list the classes of the set under "classes", or write one limit for all'
    : `write one of the classes of the set: ${classes.join(', ')}`
}
