/** Fetches what the bench page needs of the site: all of it when the page opens, so that it works on without a network. */
import {
  type SourceEvidence,
  unpackSource,
  type UnpackedSource,
} from '../../core/evidence/source-evidence.ts'
import type { Plain } from '../../records/edit/write-yaml.ts'
import { type SiteFiles, type SiteRecords, siteRecords } from './bench-records.ts'

/** Addresses that the page states. */
export interface SiteAddresses {
  readonly bench: string
  readonly conditions: string
  readonly controls: string
  readonly criteria: string
  /** Folder of the sources' evidence, and of the lots' records. */
  readonly evidence: string
  readonly lots: string
}

async function fetched<T>(address: string): Promise<T> {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`)
  return (await answer.json()) as T
}

/** @throws Error when a file cannot be fetched */
export async function fetchSite(at: SiteAddresses): Promise<SiteRecords> {
  const [bench, { conditions }, { controls }, { criteria }] = await Promise.all([
    fetched<SiteFiles['bench']>(at.bench),
    fetched<Pick<SiteFiles, 'conditions'>>(at.conditions),
    fetched<Pick<SiteFiles, 'controls'>>(at.controls),
    fetched<Pick<SiteFiles, 'criteria'>>(at.criteria),
  ])
  return siteRecords({ bench, conditions, controls, criteria })
}

const sources = new Map<string, UnpackedSource>()

/** The other lots of a source, and every condition by its title. @throws Error when the file cannot be fetched */
export async function fetchSource(
  at: SiteAddresses,
  id: string,
  { conditions }: SiteRecords['records'],
): Promise<UnpackedSource> {
  const known = sources.get(id)
  if (known !== undefined) return known
  const unpacked = unpackSource(await fetched<SourceEvidence>(`${at.evidence}${id}.json`))
  const source = {
    ...unpacked,
    // A condition that only a shipped set names is not among the source's.
    conditionTitle: (asked: string) => conditions.get(asked)?.title ?? unpacked.conditionTitle(asked),
  }
  sources.set(id, source)
  return source
}

/** A lot's record as the site publishes it. @throws Error when there is none, or it cannot be fetched */
export async function fetchRecord(at: SiteAddresses, lot: string): Promise<Plain> {
  const { record } = await fetched<{ readonly record: Plain }>(`${at.lots}${lot}.json`)
  return record
}
