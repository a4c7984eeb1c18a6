/**
 * What is read of an Edition while a file is made, by the names of what was read, so that a later build can tell whether
 * the file would come out the same (traced-edition.ts notes, dependencies.ts says what each name stands for). The notes go
 * through globalThis: pages load their modules apart from the commands (slot.ts).
 */
import { sharedNames } from './shared-names.ts'

const SLOT = Symbol.for('puteoli.trace')

/** All that was read while something was made, each once. */
export type Trace = readonly string[]

/** @param parts of what was made for several, by whose name it is noted */
type Note = (dependency: string, parts?: Trace) => void
type Slots = Record<symbol, Note | undefined>

/** Notes what is read; nothing where nobody asks. */
export function noteRead(dependency: string, parts?: Trace): void {
  ;(globalThis as unknown as Slots)[SLOT]?.(dependency, parts)
}

/** What was made, all that was read for it, and the parts of what of this was made for several. */
export interface Traced<Value> {
  readonly value: Value
  readonly trace: Trace
  readonly parts: ReadonlyMap<string, Trace>
}

export function tracing<Value>(make: () => Value): Traced<Value> {
  const { noted, parts, end } = begin()
  try {
    return { value: make(), trace: [...noted], parts }
  } finally {
    end()
  }
}

/** The same for what takes its time; nothing else may be made meanwhile. */
export async function tracingAll<Value>(make: () => Promise<Value>): Promise<Traced<Value>> {
  const { noted, parts, end } = begin()
  try {
    return { value: await make(), trace: [...noted], parts }
  } finally {
    end()
  }
}

/** What is noted within is for whoever has begun last. */
function begin() {
  const [noted, parts] = [new Set<string>(), new Map<string, Trace>()]
  const end = exchange((dependency, own) => {
    noted.add(dependency)
    if (own !== undefined) parts.set(dependency, own)
  })
  return { noted, parts, end }
}

/** Makes something whose parts are not noted: what it rests on has a name of its own. */
export function withoutTrace<Value>(make: () => Value): Value {
  const end = exchange(undefined)
  try {
    return make()
  } finally {
    end()
  }
}

/** @returns puts back what was there before */
function exchange(note: Note | undefined): () => void {
  const slots = globalThis as unknown as Slots
  const before = slots[SLOT]
  slots[SLOT] = note
  return () => {
    slots[SLOT] = before
  }
}

/** Begins the name of a question. */
export const ASKED = 'asked '

/** What is asked of an edition, and what of it the question is about. */
type Answer = (edition: never, of: string) => unknown

const answers = () => sharedNames<Answer>('puteoli.answers')

/**
 * A question that is noted in place of all that is read for its answer, so that a file is made anew only where the answer
 * is another one.
 * @param name of the question, without a blank
 * @param answer gives a plain value, and reads the edition alone
 */
export function asked<Of, Value>(
  name: string,
  answer: (edition: Of, of: string) => Value,
): (edition: Of, of: string) => Value {
  answers().set(name, answer)
  return (edition, of) => {
    noteRead(`${ASKED}${name} ${of}`)
    return withoutTrace(() => answer(edition, of))
  }
}

/** The answer of an edition; undefined for a question that no module asks. */
export function answerTo(edition: unknown, dependency: string): { readonly answer: unknown } | undefined {
  const [, name = '', of = ''] = /^\S+ (\S+) (.*)$/.exec(dependency) ?? []
  const answer = answers().get(name)
  return answer === undefined ? undefined : { answer: withoutTrace(() => answer(edition as never, of)) }
}

/** Begins the name of what is made for several. */
export const MADE = 'made '

/**
 * A value that is made for several files when the first asks for it, and kept.
 * @param name of it in traces, one for each such value of an edition: it rests on all that was read for it
 */
export function onceTraced<Value>(name: string, make: () => Value): () => Value {
  let made: Traced<Value> | undefined
  return () => {
    made ??= tracing(make)
    for (const [part, parts] of made.parts) noteRead(part, parts)
    noteRead(`${MADE}${name}`, made.trace)
    return made.value
  }
}
