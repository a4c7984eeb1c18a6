/** What every issued document says of itself, beside what it prints and holds as data. */
export interface IssuedHead {
  readonly format: 2
  /** SOURCE/LOT */
  readonly certificate: string
  readonly revision: number
  readonly state: 'provisional' | 'complete' | 'withdrawn'
  /** Date of issue, which is also the day that it speaks of. */
  readonly issued: string
  /** Stands in the private part. */
  readonly by: string
  readonly function: string
  readonly reason: string
  /** The lot that replaces a withdrawn one; in the private part where that was not yet issued. */
  readonly replacedBy?: string
  /** The revision before it, with the digest of its document. */
  readonly replaces?: { readonly revision: number; readonly date: string; readonly digest: string }
  /** Name and version of the program that made it. */
  readonly program: string
  /** Digest of the private part. */
  readonly private: string
}
