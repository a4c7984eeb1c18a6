/** One difference between the reference and the present state of what the program writes. */
export interface Difference {
  /** For example "check:demo@2025-06-30:/lots/tuff~1TL-1/state" or "site:lots/tuff/TL-1/index.html". */
  readonly where: string
  /** The same with ids and numbers replaced by "*"; differences are grouped by it. */
  readonly pattern: string
  /** Null where the reference has nothing of the kind. */
  readonly was: string | null
  /** Null where the present state has nothing of the kind. */
  readonly is: string | null
}

/** What a comparison found and how much it looked at. */
export interface Compared {
  readonly differences: readonly Difference[]
  readonly reports: number
  readonly values: number
  readonly files: number
}

/** A path with every segment that looks like an id or a number replaced by "*". */
export function patternOf(path: string): string {
  return path
    .split('/')
    .map((segment) => (/[\d|~]/.test(segment) ? '*' : segment))
    .join('/')
}

/** Label, first folder and name of a file, with two stars for what lies between. */
export function filePatternOf(where: string): string {
  const [first = '', ...others] = where.split('/')
  const name = others.pop()
  if (name === undefined) return first
  const last = /\d/.test(name) ? name.replace(/^[^.]*/, '*') : name
  return [first, ...(others.length === 0 ? [] : ['**']), last].join('/')
}

export function together(parts: readonly Compared[]): Compared {
  const sum = (member: 'reports' | 'values' | 'files') =>
    parts.reduce((total, part) => total + part[member], 0)
  return {
    differences: parts.flatMap((part) => part.differences),
    reports: sum('reports'),
    values: sum('values'),
    files: sum('files'),
  }
}
