const LETTERS = 'abcdefghijklmnopqrstuvwxyz'.split('')

/** The mark of one more specimen: the letter after the last, a letter that is free, a number where letters have run out. */
export function nextKey(taken: readonly string[]): string {
  const last = taken.at(-1) ?? ''
  const after = /^[a-y]$/i.test(last) ? String.fromCharCode(last.charCodeAt(0) + 1) : 'a'
  return [after, ...LETTERS].find((letter) => !taken.includes(letter)) ?? String(taken.length + 1)
}
