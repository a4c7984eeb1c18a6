/** The records of npm run dev: read and computed anew after a save, as far as they can be. */
import { dirname } from 'node:path'
import { computeEdition } from '../edition/compute.ts'
import { Memory } from '../edition/passes/memory.ts'
import { forAudience } from '../edition/publishing.ts'
import { paths } from '../edition/shape/addresses.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { putEdition } from '../edition/shape/slot.ts'
import { type FaultyRecord, faultyRecords } from '../records/checks/faulty-records.ts'
import { diagnosticsText } from '../records/diagnostics/diagnostic-text.ts'
import type { ReadBefore } from '../records/read-before.ts'
import { hasSite, type Records } from '../records/load.ts'
import { keptReadings } from './kept-readings.ts'
import { memoryWatch } from './memory-watch.ts'
import { CommandFailure, PROGRAM, today, usualOut } from './program.ts'
import { shippedRecords } from './shipped.ts'
import { printDiagnostics, readContent } from './read-content.ts'

/** What is wrong with the records now. */
export interface DevFault {
  /** As it is printed in the terminal. */
  readonly text: string
  /** Whether nothing but the fault can be shown at a path below the base. */
  readonly hides: (path: string) => boolean
}

export class DevRecords {
  /** Undefined while all is well. */
  fault: DevFault | undefined
  readonly #folder: string
  readonly #before: ReadBefore
  readonly #issued: ReadBefore
  readonly #memory = new Memory()
  #hasEdition = false

  constructor(folder: string) {
    this.#folder = folder
    const kept = keptReadings({ beside: dirname(usualOut(folder, 'dist')), content: folder })
    this.#before = kept.before
    this.#issued = kept.issued
    this.load()
  }

  /** Reads what was saved and puts the edition of it, drafts included; where there is no site, the earlier one stays. */
  load(): void {
    const before = this.fault
    const content = this.#read()
    if (content === undefined) return
    if (hasSite(content.records) || !this.#hasEdition) this.#put(content.records)
    printDiagnostics(content)
    this.fault =
      content.errors === 0
        ? undefined
        : {
            text: diagnosticsText(content.diagnostics, this.#folder),
            hides: hasSite(content.records) ? pagesOf(faultyRecords(content.diagnostics)) : () => true,
          }
    if (before !== undefined && this.fault === undefined)
      process.stderr.write('All records can be read again.\n')
  }

  /** Undefined where the folder itself is gone, which is told; it may be on its way back. */
  #read(): ReturnType<typeof readContent> | undefined {
    try {
      return readContent(this.#folder, { before: this.#before, issued: this.#issued })
    } catch (error) {
      if (!(error instanceof CommandFailure) || !this.#hasEdition) throw error
      process.stderr.write(`${error.message}\n`)
      this.fault = { text: error.message, hides: () => true }
      return undefined
    }
  }

  #put(records: Records): void {
    putEdition(withDrafts(records, this.#memory))
    this.#hasEdition = true
  }
}

function withDrafts(records: Records, memory: Memory): Edition {
  const edition = computeEdition(records, {
    ...{ program: PROGRAM, today: today(), memory, atLot: memoryWatch() },
    shipped: shippedRecords(),
  })
  return forAudience({ ...edition, site: { ...edition.site, drafts: 'yes' } }, 'public')
}

/** Pages of records that are at fault: what they were made of cannot be read. */
function pagesOf(faulty: readonly FaultyRecord[]): DevFault['hides'] {
  const pages = faulty.flatMap(({ kind, id }) => {
    switch (kind) {
      case 'lot':
        return [paths.certificate(id)]
      case 'source':
        return [paths.source(id), `lots/${id}/`]
      case 'criterion':
        return [paths.criterion(id)]
      case 'study':
        return [paths.study(id)]
      case 'laboratory':
        return [paths.laboratory(id)]
      case 'method':
        return [`methods/${id}/`]
      default:
        return []
    }
  })
  return (path) => pages.some((page) => path.startsWith(page))
}
