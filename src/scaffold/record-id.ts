/** Ids of new records: the name of the file, and for good in every address. */
import { recordAt } from '../records/record-path.ts'

/** Folders that new records go into, by kind. */
export const FOLDERS = {
  producer: 'producers',
  laboratory: 'laboratories',
  source: 'sources',
  condition: 'conditions',
  control: 'controls',
  criterion: 'criteria',
  study: 'studies',
} as const

export type NewKind = keyof typeof FOLDERS

const LONGEST = 64

/** An id made of a name: "Fly ash, unit 2" gives "fly-ash-unit-2". @param otherwise where nothing of the name is left */
export function idFor(name: string, otherwise: string): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
  const id = plain
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '')
  return /^<your /.test(name) || idFault('source', id) !== undefined ? otherwise : id
}

/** Why a text cannot be the id of a record; undefined where it can. */
export function idFault(kind: NewKind, id: string): string | undefined {
  return faultAt(`${FOLDERS[kind]}/${id}.yaml`)
}

/** The same of a lot's name within its source. */
export function lotNameFault(name: string): string | undefined {
  if (/^\d{4}$/.test(name) || ['parts', 'report', 'shipments'].includes(name.toLowerCase()))
    return `"${name}" is not a valid id of a lot: its address is that of a page of its source`
  return faultAt(`lots/source/${name}.yaml`)
}

function faultAt(path: string): string | undefined {
  const name = recordAt(path)
  return 'kind' in name ? undefined : name.message
}
