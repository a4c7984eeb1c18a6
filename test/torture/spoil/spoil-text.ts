/** Ways to spoil the text of a record, whatever it says. */
import type { Chance } from '../../../src/demo/chance.ts'
import { ODD_WRITINGS } from './odd-values.ts'

export type SpoilText = (text: string, chance: Chance) => string

/** One of a list, which holds at least one. */
export function oneOf<T>(list: readonly T[], chance: Chance): T {
  return list[chance.whole(0, list.length - 1)] as T
}

/** An offset into a text, its end included. */
const offset = (text: string, chance: Chance) => chance.whole(0, text.length)

/** A line's number, from 0. */
function changedLines(text: string, change: (lines: string[]) => void): string {
  const lines = text.split('\n')
  change(lines)
  return lines.join('\n')
}

function insertedAt(text: string, at: number, piece: string): string {
  return text.slice(0, at) + piece + text.slice(at)
}

/** A value after a colon, in a block or within braces. */
const VALUE = /(?<=: )[^,{}[\]\n]+(?=[,}\]\n]|$)/g

function values(text: string): readonly RegExpExecArray[] {
  return [...text.matchAll(VALUE)]
}

function withValue(text: string, chance: Chance, change: (value: string) => string): string {
  const found = values(text)
  if (found.length === 0) return change(text)
  const { index, 0: value } = oneOf(found, chance)
  return text.slice(0, index) + change(value) + text.slice(index + value.length)
}

const SIGNS = [
  '\u0000', '\u0001', '\u0007', '\b', '\t', '\n', '\v', '\f', '\r', '\u001b', '\u007f', '\u0085', '\u00a0',
  '\u00ad', '\u200b', '\u200e', '\u2028', '\u2029', '\u202e', '\u2066', '\ufeff', '\ufffd', '\uffff', '\ud800',
  '\udc00', '{', '}', '[', ']', ',', ':', ': ', '-', '- ', '#', ' #', '&', '*', '!', '|', '>', "'", '"', '%',
  '@', '`', '?', '? ', '\\', '<', '=', '~', '.', '0', '9', 'e', ' ', '  ', '–', '−', '’', '“', '‰', '¼', 'µ',
] // biome-ignore format: a table of single signs reads best in rows

/** Looks like the sign before it and is another. */
const LOOK_ALIKES: Readonly<Record<string, string>> = {
  a: 'а', c: 'с', e: 'е', o: 'о', p: 'р', x: 'х', i: 'і', '-': '‑', ':': '：', ',': '，', '%': '％', '0': '０',
  '1': '１', '.': '．', ' ': '\u2007', '"': '”', "'": '’', '#': '＃', '{': '｛', T: 'Т', K: 'К', C: 'С',
} // biome-ignore format: a table of pairs reads best in rows

function lookAlike(text: string, chance: Chance): string {
  const at = offset(text, chance)
  const rest = text.slice(at)
  const place = [...rest].findIndex((sign) => sign in LOOK_ALIKES)
  if (place < 0) return text
  const sign = rest[place] ?? ''
  return text.slice(0, at + place) + (LOOK_ALIKES[sign] ?? sign) + rest.slice(place + 1)
}

const HEADS = ['\ufeff', '\ufeff\ufeff', '---\n', '--- ', '%YAML 1.2\n---\n', '%TAG ! tag:x,2026:\n---\n', '\t', '\n\n', '# x\n', '&top\n', '!!map\n', '...\n', '\r\n', '- ', '  '] // biome-ignore format: one line
const TAILS = ['\n...', '\n...\n', '\n...\n...\n', '\n...\n# x\n', '\n---\n', '\n---\na: 1\n', '\n... x\n', '\n--- x\n', '\n\u0000', '\n\t', '\r', '\n}', '\nx', '\n- x', '\n? x', '\n<<: *a\n', '\n<<: { a: 1 }\n', '\n__proto__: { polluted: yes }\n', '\n%YAML 1.1\n', '\n<<<<<<< HEAD\n=======\n>>>>>>> x\n'] // biome-ignore format: one line

/** Every way, each as likely as any other. */
export const SPOIL_TEXT: Readonly<Record<string, SpoilText>> = {
  'cut off': (text, chance) => text.slice(0, offset(text, chance)),
  'begun late': (text, chance) => text.slice(offset(text, chance)),
  'piece taken out': (text, chance) => {
    const at = offset(text, chance)
    return text.slice(0, at) + text.slice(at + chance.whole(1, 30))
  },
  'piece written twice': (text, chance) => {
    const at = offset(text, chance)
    return insertedAt(text, at, text.slice(at, at + chance.whole(1, 200)))
  },
  'line taken out': (text, chance) =>
    changedLines(text, (lines) => lines.splice(chance.whole(0, lines.length - 1), 1)),
  'line written twice': (text, chance) =>
    changedLines(text, (lines) => {
      const at = chance.whole(0, lines.length - 1)
      lines.splice(at, 0, lines[at] ?? '')
    }),
  'two lines swapped': (text, chance) =>
    changedLines(text, (lines) => {
      const [a, b] = [chance.whole(0, lines.length - 1), chance.whole(0, lines.length - 1)]
      ;[lines[a], lines[b]] = [lines[b] ?? '', lines[a] ?? '']
    }),
  'line indented': (text, chance) =>
    changedLines(text, (lines) => {
      const at = chance.whole(0, lines.length - 1)
      lines[at] = oneOf([' ', '  ', '\t', '    ', '- '], chance) + (lines[at] ?? '')
    }),
  'line outdented': (text, chance) =>
    changedLines(text, (lines) => {
      const at = chance.whole(0, lines.length - 1)
      lines[at] = (lines[at] ?? '').replace(/^ {1,2}/, '')
    }),
  'sign put in': (text, chance) => insertedAt(text, offset(text, chance), oneOf(SIGNS, chance)),
  'sign replaced': (text, chance) => {
    const at = offset(text, chance)
    return text.slice(0, at) + oneOf(SIGNS, chance) + text.slice(at + 1)
  },
  'look-alike': lookAlike,
  'value replaced': (text, chance) => withValue(text, chance, () => oneOf(ODD_WRITINGS, chance)),
  'value followed': (text, chance) => withValue(text, chance, (value) => value + oneOf(ODD_WRITINGS, chance)),
  'value preceded': (text, chance) =>
    withValue(text, chance, (value) => `${oneOf(ODD_WRITINGS, chance)} ${value}`),
  'value emptied': (text, chance) => withValue(text, chance, () => ''),
  'value quoted': (text, chance) => withValue(text, chance, (value) => `"${value}"`),
  'number grown': (text, chance) =>
    withValue(text, chance, (value) => value.replace(/\d+/, (digits) => digits.repeat(chance.whole(2, 40)))),
  'number negated': (text, chance) => withValue(text, chance, (value) => value.replace(/\d/, '-$&')),
  'values swapped': (text, chance) => {
    const found = values(text)
    return found.length === 0 ? text : withValue(text, chance, () => oneOf(found, chance)[0])
  },
  'head put before': (text, chance) => oneOf(HEADS, chance) + text,
  'tail put after': (text, chance) => text.replace(/\n$/, '') + oneOf(TAILS, chance),
  'line ends of Windows': (text) => text.replaceAll('\n', '\r\n'),
  'line ends of old': (text) => text.replaceAll('\n', '\r'),
  'line ends mixed': (text, chance) => text.replace(/\n/g, () => oneOf(['\n', '\r\n', '\r'], chance)),
  'spaces of tabs': (text) => text.replace(/^ +/gm, (spaces) => '\t'.repeat(spaces.length)),
  'deeply nested': (text, chance) =>
    withValue(text, chance, () => {
      const levels = oneOf([10, 29, 31, 200, 3000], chance)
      return oneOf(
        ['['.repeat(levels) + ']'.repeat(levels), '{a: '.repeat(levels), '- '.repeat(levels)],
        chance,
      )
    }),
}
