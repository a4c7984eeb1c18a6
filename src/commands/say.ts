/** What a command tells on standard output. */

/** Each line ended, an empty one left blank. */
export function say(...lines: readonly string[]): void {
  process.stdout.write(lines.map((line) => `${line}\n`).join(''))
}
