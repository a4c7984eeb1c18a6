/** A file that a new record or site is laid out as. */
export interface NewFile {
  /** Below the content folder, with forward slashes. */
  readonly path: string
  readonly text: string
}

export function textOf(lines: readonly string[]): string {
  return `${lines.join('\n')}\n`
}

/** Where what follows a value begins, so that remarks stand below one another. */
const REMARK_COLUMN = 36

/** A line with a remark behind it. */
export function remarked(line: string, remark: string): string {
  return `${line.padEnd(REMARK_COLUMN)} # ${remark}`
}

/** A key with its value, or, while that is not known, with what it takes. */
export function filled(key: string, value: string | undefined, remark: string): string {
  return value === undefined ? remarked(key, remark) : `${key} ${value}`
}
