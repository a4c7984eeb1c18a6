/** A code explained in a terminal. */
import { placeOfExample } from './explained/explanation.ts'
import { type ExplainedCode, explanationOf, titleOf } from './explanations.ts'

const WIDTH = 78

/** What the code says and means, an example with the same text put right, and the fix. */
export function explanationText(code: ExplainedCode): string {
  const { meaning, example, fix } = explanationOf(code)
  const parts = [
    [code],
    wrapped(titleOf(code)),
    wrapped(meaning),
    ...(example === undefined
      ? []
      : [
          [wrongWords(placeOfExample(example)), ...indented(example.wrong)],
          ['Right:', ...indented(example.right)],
        ]),
    wrapped(`Fix: ${fix}`),
  ]
  return `${parts.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

function wrongWords(place: string): string {
  return place === '' ? 'Wrong:' : `Wrong, ${place}:`
}

function indented(text: string): string[] {
  return text.split('\n').map((line) => `  ${line}`)
}

/** Text in lines of at most so many signs, broken at blanks. */
function wrapped(text: string): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last === undefined || WIDTH < last.length + 1 + word.length) lines.push(word)
    else lines[lines.length - 1] = `${last} ${word}`
  }
  return lines
}
