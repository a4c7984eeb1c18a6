/** What is said of a code beside its own sentence: what it means, how a record looks that has it, how to fix it. */
export interface Explanation {
  /** What is meant and why it matters, in whole sentences. */
  readonly meaning: string
  readonly example?: Example | NameExample | ImportExample
  /** How to fix it, in whole sentences. */
  readonly fix: string
}

/** The fault beside the same text without it. A test reads both with the loader: the one gives the code and no other, the other nothing. */
export interface Example {
  /** In the content folder. */
  readonly file: string
  readonly wrong: string
  readonly right: string
  /** What stands in the test's record in this place; `right` itself unless it says so. What is not there goes to the end. */
  readonly instead?: string
}

/** A file whose name is at fault: `wrong` and `right` are paths, and the test copies this record there. */
export interface NameExample {
  readonly copied: string
  readonly wrong: string
  readonly right: string
}

/** A table of text, or a line of the map that it is imported by: the one gives the code and no other, the other nothing. */
export interface ImportExample {
  readonly of: 'sheet' | 'map'
  readonly wrong: string
  readonly right: string
}

/** Where a text shown as an example stands: "in lots/tuff/T-1.yaml"; empty where a file's name itself is the example. */
export function placeOfExample(example: Example | NameExample | ImportExample): string {
  if ('file' in example) return `in ${example.file}`
  return 'of' in example ? `in the ${example.of}` : ''
}
