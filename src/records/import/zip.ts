/**
 * The files within a zip archive, inflated only when asked for and never beyond a bound.
 * Source: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.16 and 4.4.7 (checksum).
 */
import { crc32, inflateRawSync } from 'node:zlib'

/** Bytes that one file within an archive may have; a year of a laboratory's sheet has some 20 MiB of XML. */
const LARGEST_PART = 96 * 1024 * 1024
/** Bytes that all files together may have. */
const LARGEST_WHOLE = 192 * 1024 * 1024
const MOST_PARTS = 5000
const END_BYTES = 22
const LONGEST_COMMENT = 65535

/** A file that is no workbook, is damaged, or is larger than a bench ever needs. */
export class WorkbookFault extends Error {
  readonly mend: string
  constructor(message: string, mend: string) {
    super(message)
    this.mend = mend
  }
}

const DAMAGED = 'open it in a spreadsheet program and save it anew as .xlsx'

interface Part {
  readonly method: number
  /** CRC-32 of the unpacked bytes. */
  readonly checksum: number
  readonly packed: number
  readonly size: number
  readonly offset: number
}

export interface Archive {
  /** The bytes of a file in the archive; null where there is none of that name. */
  readonly read: (name: string) => Buffer | null
}

/** @throws WorkbookFault for bytes that are no archive, and for one that would unpack to more than the bounds */
export function openArchive(bytes: Buffer): Archive {
  const parts = partsOf(bytes)
  const whole = [...parts.values()].reduce((sum, { size }) => sum + size, 0)
  if (LARGEST_WHOLE < whole || [...parts.values()].some(({ size }) => LARGEST_PART < size)) throw tooLarge()
  return {
    read: (name) => {
      const part = parts.get(name)
      return part === undefined ? null : unpacked(bytes, part)
    },
  }
}

function tooLarge(): WorkbookFault {
  return new WorkbookFault(
    `the workbook would unpack to more than ${LARGEST_PART / 1024 / 1024} MiB`,
    'save the sheets that are to be imported in a workbook of their own',
  )
}

function damaged(): WorkbookFault {
  return new WorkbookFault('the workbook is damaged', DAMAGED)
}

function partsOf(bytes: Buffer): Map<string, Part> {
  const end = endOf(bytes)
  if (end < 0)
    throw new WorkbookFault(
      'the file is no .xlsx workbook',
      bytes.readUInt16BE(0) === 0xd0cf ? 'save it as .xlsx without a password' : DAMAGED,
    )
  const count = bytes.readUInt16LE(end + 10)
  if (MOST_PARTS < count) throw tooLarge()
  const parts = new Map<string, Part>()
  let place = bytes.readUInt32LE(end + 16)
  for (let index = 0; index < count; index += 1) {
    if (bytes.length < place + 46 || bytes.readUInt32LE(place) !== 0x02014b50) throw damaged()
    const [name, extra, comment] = [28, 30, 32].map((at) => bytes.readUInt16LE(place + at)) as [
      number,
      number,
      number,
    ]
    if ((bytes.readUInt16LE(place + 8) & 1) === 1)
      throw new WorkbookFault('the workbook has a password', 'save it without one')
    const offset = bytes.readUInt32LE(place + 42)
    const named = bytes.subarray(place + 46, place + 46 + name)
    // Each part bears its name twice: under another one it would be taken for missing.
    if (!bytes.subarray(offset + 30, offset + 30 + name).equals(named)) throw damaged()
    parts.set(named.toString('utf8').replaceAll('\\', '/'), {
      method: bytes.readUInt16LE(place + 10),
      checksum: bytes.readUInt32LE(place + 16),
      packed: bytes.readUInt32LE(place + 20),
      size: bytes.readUInt32LE(place + 24),
      offset,
    })
    place += 46 + name + extra + comment
  }
  return parts
}

/** Where the record stands that ends an archive; negative where there is none. */
function endOf(bytes: Buffer): number {
  const least = Math.max(0, bytes.length - END_BYTES - LONGEST_COMMENT)
  for (let place = bytes.length - END_BYTES; least <= place; place -= 1)
    if (bytes.readUInt32LE(place) === 0x06054b50) return place
  return -1
}

/** A bit that flipped on the way would be another number in a cell: what does not bear out its checksum is not read. */
function unpacked(bytes: Buffer, part: Part): Buffer {
  const data = inflated(bytes, part)
  if (data.length !== part.size || crc32(data) !== part.checksum) throw damaged()
  return data
}

function inflated(bytes: Buffer, { method, packed, size, offset }: Part): Buffer {
  if (bytes.length < offset + 30 || bytes.readUInt32LE(offset) !== 0x04034b50) throw damaged()
  const from = offset + 30 + bytes.readUInt16LE(offset + 26) + bytes.readUInt16LE(offset + 28)
  const data = bytes.subarray(from, from + packed)
  if (method === 0) return data
  if (method !== 8) throw damaged()
  try {
    // What the archive states as the size is only its own word: no more than that is ever unpacked.
    return inflateRawSync(data, { maxOutputLength: Math.max(1, size) })
  } catch {
    throw damaged()
  }
}
