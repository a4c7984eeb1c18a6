/** What is said of a code beside its own sentence: what it means, how a record looks that has it, how to fix it. */
export interface Explanation {
  /** What is meant and why it matters, in whole sentences. */
  readonly meaning: string
  readonly example?: Example | NameExample
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
