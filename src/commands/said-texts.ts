/** What a person says by an option and what a record then keeps. */
import { isBlank, unseenInLine } from '../records/yaml/unseen-characters.ts'
import { CommandFailure, EXIT } from './program.ts'

/** As schemas/lot.json has it for names, functions and reasons. */
const LONGEST = 500

/** @throws CommandFailure (wrong use) for a text that no record takes; one that was not given is no fault */
export function checkSaid(option: string, text: string | undefined): void {
  if (text === undefined) return
  const unseen = unseenInLine(text)
  const fault =
    text === '' || isBlank(text)
      ? `${option} says nothing.`
      : LONGEST < text.length
        ? `${option} is a text of ${text.length} characters, and a record takes ${LONGEST}.`
        : unseen !== undefined
          ? `${option} holds ${unseen.name}, which nobody sees.`
          : undefined
  if (fault !== undefined)
    throw new CommandFailure(fault, EXIT.wrongUse, `give ${option} a text of one line, to be read`)
}
