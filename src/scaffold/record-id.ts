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

export interface IdFault {
  readonly message: string
  readonly mend: string
}

/** Why a text cannot be the id of a record; undefined where it can. */
export function idFault(kind: NewKind, id: string): IdFault | undefined {
  return faultAt(`${FOLDERS[kind]}/${id}.yaml`)
}

/** The same of a lot's name within its source. */
export function lotNameFault(name: string): IdFault | undefined {
  if (/^\d{4}$/.test(name) || ['parts', 'report', 'shipments'].includes(name.toLowerCase()))
    return {
      message: `"${name}" is not a valid id of a lot: its address is that of a page of its source`,
      mend: 'choose another',
    }
  return faultAt(`lots/source/${name}.yaml`)
}

function faultAt(path: string): IdFault | undefined {
  const name = recordAt(path)
  if ('kind' in name) return undefined
  return name.code === 'file-unexpected' ? NO_ID : name
}

/** A name with a slash, or none at all, leads to another place. */
const NO_ID: IdFault = {
  message: 'the text given is not a valid id',
  mend: 'use at most 64 letters, digits and hyphens, beginning with a letter or digit',
}
