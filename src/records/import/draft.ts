/**
 * A record while an import fills it in: what is on record is found again and never overwritten; what differs is kept apart,
 * with the cell that says otherwise.
 */
import { isFault, type QuantityKind, readPerhapsAbove } from '../../core/measure/units.ts'
import { ageIn } from '../../core/measure/age.ts'
import type { Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { below } from '../yaml/pointer.ts'
import type { Reads } from './fields.ts'
import { type CellPlace, cellWords } from './grid.ts'
import type { TellFault } from './import-fault.ts'

export type Mapping = { [key: string]: Plain }

/** A value on record, and what the file says in its place. */
export interface Difference {
  readonly path: Path
  readonly onRecord: Plain
  readonly inFile: Plain
  readonly place: CellPlace | null
}

/** A value of the file with its cell and how it is compared. */
export interface Stated {
  readonly written: Plain
  readonly place: CellPlace | null
  readonly reads?: Reads
}

export class RecordDraft {
  /** As the record will be. */
  readonly value: Mapping
  readonly differences: Difference[] = []
  /** The cells that values come from, by JSON pointer. */
  readonly origins = new Map<string, CellPlace>()
  /** Where values stand that were not on record, by JSON pointer. */
  readonly added = new Set<string>()
  /** Where values stood that gave way to those of the file. */
  readonly replaced: Path[] = []
  /** The first cell that spoke of the record. */
  readonly begun: CellPlace | null
  /** Where the file speaks of values, whether they are new or not. */
  private readonly stated = new Map<string, { readonly written: Plain; readonly place: CellPlace | null }>()
  private readonly tell: TellFault
  private readonly existing: string
  private changes = 0

  /** @param existing the record's value; null for a new one */
  constructor(existing: Mapping | null, begun: CellPlace | null, tell: TellFault) {
    this.value = existing === null ? {} : (structuredClone(existing) as Mapping)
    this.existing = JSON.stringify(existing ?? {})
    this.begun = begun
    this.tell = tell
  }

  get isChanged(): boolean {
    return 0 < this.changes && JSON.stringify(this.value) !== this.existing
  }

  /** Puts a value where there is none; one that differs is kept apart. */
  state(path: Path, { written, place, reads }: Stated): void {
    const pointer = pointerOf(path)
    const before = this.stated.get(pointer)
    if (before !== undefined && !isSame(before.written, written, reads))
      this.tellTwice(before, written, place)
    if (before !== undefined) return
    this.stated.set(pointer, { written, place })
    const holder = this.mappingAt(path.slice(0, -1))
    const key = String(path.at(-1))
    const old = Object.hasOwn(holder, key) ? holder[key] : undefined
    if (isNothing(old)) {
      this.added.add(pointer)
      this.put(holder, path, { written, place })
    } else if (!isSame(old as Plain, written, reads))
      this.differences.push({ path, onRecord: old as Plain, inFile: written, place })
  }

  /** The index of the item of a list that a test holds for; a new one is added where there is none. */
  itemOf(path: Path, isIt: (item: Mapping) => boolean, make: () => Mapping, place: CellPlace | null): number {
    const list = this.listAt(path)
    const found = list.findIndex((item) => isMapping(item) && isIt(item))
    if (0 <= found) return found
    this.changes += 1
    list.push(make())
    this.added.add(pointerOf([...path, list.length - 1]))
    if (place !== null) this.origins.set(pointerOf([...path, list.length - 1]), place)
    return list.length - 1
  }

  /** Says which cell a value comes from that was made with its item. */
  claim(path: Path, place: CellPlace | null | undefined): void {
    const pointer = pointerOf(path)
    if (place !== null && place !== undefined && !this.origins.has(pointer)) this.origins.set(pointer, place)
  }

  /** The items of a list; empty where there is none. */
  items(path: Path): readonly Mapping[] {
    const list = this.at(path)
    return Array.isArray(list) ? list.filter(isMapping) : []
  }

  /** Makes a list of a value that stands alone; what is known of the value goes with it. */
  makeList(path: Path): void {
    const holder = this.mappingAt(path.slice(0, -1))
    const key = String(path.at(-1))
    const old = holder[key]
    if (Array.isArray(old)) return
    holder[key] = isNothing(old) ? [] : [old as Plain]
    const pointer = pointerOf(path)
    for (const known of [this.stated, this.origins] as Map<string, unknown>[])
      for (const [at, what] of [...known])
        if (at.startsWith(`${pointer}/`)) known.set(`${pointer}/0${at.slice(pointer.length)}`, what)
  }

  at(path: Path): Plain | undefined {
    return path.reduce<Plain | undefined>((inner, key) => {
      if (Array.isArray(inner)) return inner[Number(key)]
      return isMapping(inner) && Object.hasOwn(inner, key) ? inner[String(key)] : undefined
    }, this.value)
  }

  /** Overwrites what differs. */
  replace(): void {
    for (const { path, inFile, place } of this.differences) {
      this.put(this.mappingAt(path.slice(0, -1)), path, { written: inFile, place })
      this.replaced.push(path)
    }
    this.differences.length = 0
  }

  /** The cell that a value, or the nearest one around it, comes from. */
  originOf(pointer: string): CellPlace | null {
    for (let at = pointer; at !== ''; at = at.slice(0, at.lastIndexOf('/'))) {
      const origin = this.origins.get(at)
      if (origin !== undefined) return origin
      for (const [inner, place] of this.origins) if (inner.startsWith(`${at}/`)) return place
    }
    return this.begun
  }

  private put(holder: Mapping, path: Path, { written, place }: Stated): void {
    holder[String(path.at(-1))] = written
    this.changes += 1
    if (place !== null) this.origins.set(pointerOf(path), place)
  }

  private mappingAt(path: Path): Mapping {
    let inner: Plain = this.value
    for (const key of path) {
      const holder = inner as Mapping
      if (isNothing(holder[String(key)])) holder[String(key)] = {}
      inner = holder[String(key)] as Plain
    }
    return inner as Mapping
  }

  private listAt(path: Path): Plain[] {
    const holder = this.mappingAt(path.slice(0, -1))
    const key = String(path.at(-1))
    if (!Array.isArray(holder[key])) holder[key] = []
    return holder[key] as Plain[]
  }

  private tellTwice(
    before: { readonly written: Plain; readonly place: CellPlace | null },
    written: Plain,
    place: CellPlace | null,
  ): void {
    this.tell({
      code: 'import-twice',
      severity: 'error',
      place,
      message: `found ${inWords(written)}; ${placeNearby(before.place)} states ${inWords(before.written)} for the same`,
      mend: 'correct one of the two; a repeated test needs its own date',
    })
  }
}

function placeNearby(place: CellPlace | null): string {
  return place === null ? 'the map' : cellWords(place)
}

export function inWords(value: Plain): string {
  return typeof value === 'string' || typeof value === 'number' ? `"${value}"` : JSON.stringify(value)
}

export function pointerOf(path: Path): string {
  return path.reduce<string>((pointer, key) => below(pointer, key), '')
}

export function isMapping(value: Plain | undefined): value is Mapping {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** A blank of a bench sheet: a record may be laid out before its figures are known. */
export function isNothing(value: Plain | undefined): boolean {
  return value === undefined || value === null || value === ''
}

/** Whether a value on record says what the file says, however either is written. */
export function isSame(onRecord: Plain, inFile: Plain, reads?: Reads): boolean {
  if (onRecord === inFile) return true
  if (isMapping(onRecord) && isMapping(inFile))
    return Object.entries(inFile).every(([key, value]) => isSame(onRecord[key] ?? null, value, reads))
  if (typeof inFile === 'object' || typeof onRecord === 'object')
    return JSON.stringify(onRecord) === JSON.stringify(inFile)
  const [one, other] = [String(onRecord), String(inFile)]
  if (one === other) return true
  // A record that knows the time of day says what the day alone says.
  if (reads?.as === 'moment' || reads?.as === 'date') return one.startsWith(`${other}T`)
  if (reads?.as === 'age') return ageIn(one)?.hours === ageIn(other)?.hours
  return reads?.as === 'quantity' && isSameQuantity(one, other, reads.kind)
}

function isSameQuantity(one: string, other: string, kind: QuantityKind): boolean {
  const [a, b] = [readPerhapsAbove(one, kind), readPerhapsAbove(other, kind)]
  return !isFault(a) && !isFault(b) && a.value === b.value && a.censored === b.censored && a.above === b.above
}
