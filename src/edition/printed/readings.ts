/**
 * Readings of mortars as the record of a document writes them, with the words and signs of its day: nothing here
 * rounds or converts.
 */
import type { CertificateWords } from '../../words/certificate-words.ts'
import type { PrintedReading, PrintedReadings } from '../shape/printed-certificate.ts'

type ReadingWords = CertificateWords['readings']

/** A record in its written form: quantities, dates and ages are texts. */
interface Written {
  readonly [member: string]: unknown
}

/**
 * @param tests the mortars of a lot's record in written form
 * @param controls records of control batches by id, in written form
 */
export function printedReadings(
  tests: unknown,
  controls: Readonly<Record<string, unknown>>,
  words: ReadingWords,
): PrintedReadings[] {
  return listOf(tests).flatMap((test) => {
    const control = writtenOf(controls[textOf(test['control'])])
    const own = readingsOf(test)
    const ages = new Set(own.map(({ reading }) => textOf(reading['age'])))
    const beside = readingsOf(control).filter(({ reading }) => ages.has(textOf(reading['age'])))
    // Figures may have come finished, so that nothing was read.
    if (own.length === 0) return []
    return [
      {
        sample: textOf(test['sample']),
        condition: textOf(test['condition']),
        readings: [
          ...own.map((reading) => printedReading(words.test, reading, words)),
          ...beside.map((reading) => printedReading(words.control, reading, words)),
        ],
      },
    ]
  })
}

interface Reading {
  readonly of: 'strength' | 'resistivity'
  readonly reading: Written
}

/** Those that were read; a planned one has no date. */
function readingsOf(mortar: Written): Reading[] {
  return (['strength', 'resistivity'] as const).flatMap((of) =>
    listOf(mortar[of])
      .filter((reading) => reading['tested'] !== undefined)
      .map((reading) => ({ of, reading })),
  )
}

function printedReading(mortar: string, { of, reading }: Reading, words: ReadingWords): PrintedReading {
  return {
    mortar: [mortar, words[of], textOf(reading['age'])].join(', '),
    tested: textOf(reading['tested']).replace('T', ' '),
    specimens: signed(specimenWords(reading, words), words),
    facts: signed(factsOf(of, reading, words).join(', '), words),
  }
}

function specimenWords(reading: Written, words: ReadingWords): string {
  if (reading['mean'] !== undefined)
    return `${words.meanOf} ${textOf(reading['of'] ?? '?')} ${textOf(reading['mean'])}`
  return Object.entries(writtenOf(reading['specimens']))
    .map(
      ([mark, specimen]) =>
        `${mark} ${typeof specimen === 'string' ? specimen : detailed(writtenOf(specimen), words)}`,
    )
    .join('; ')
}

/** What a specimen's reading is called, in the order of choice. */
const READINGS = ['load', 'strength', 'resistance', 'resistivity']

function detailed(specimen: Written, words: ReadingWords): string {
  const name = READINGS.find((candidate) => specimen[candidate] !== undefined)
  const sizes = Object.entries(specimen)
    .filter(([key, member]) => key !== name && key !== 'excluded' && typeof member === 'string')
    .map(([key, size]) => `${key.replace('-', ' ')} ${textOf(size)}`)
  const directions = Object.entries(writtenOf(specimen['directions']))
    .map(([direction, read]) => `${direction}: ${textOf(read)}`)
    .join(', ')
  return [
    name === undefined ? directions || words.noReading : textOf(specimen[name]),
    sizes.length === 0 ? '' : ` (${sizes.join(', ')})`,
    specimen['excluded'] === undefined ? '' : `, ${words.excluded}: ${exclusionText(specimen['excluded'])}`,
  ].join('')
}

/** An exclusion is a reason, or a reason with its day. */
function exclusionText(excluded: unknown): string {
  if (typeof excluded === 'string') return excluded
  const { reason, on } = writtenOf(excluded)
  return [reason, on]
    .filter((part) => part !== undefined)
    .map(textOf)
    .join(', ')
}

/** Members that stand elsewhere in the line. */
const TOLD = ['age', 'tested', 'specimens', 'mean', 'of']

/** How it was read, in the order of the record's own members. */
function factsOf(of: Reading['of'], reading: Written, words: ReadingWords): string[] {
  const { temperature, verification } = reading
  const facts = Object.entries(reading)
    .filter(([key, member]) => !TOLD.includes(key) && typeof member === 'string' && key !== 'temperature')
    .map(([key, fact]) => `${key.replaceAll('-', ' ')} ${textOf(fact)}`)
  const { read, known } = writtenOf(verification)
  return [
    ...(temperature !== undefined
      ? [`${words.at} ${textOf(temperature)}`]
      : of === 'resistivity'
        ? [words.noTemperature]
        : []),
    ...facts,
    ...(read === undefined ? [] : [`${words.checkResistor} ${textOf(read)} / ${textOf(known)}`]),
  ]
}

/** Units behind numbers in the signs of print. */
function signed(text: string, { signs }: ReadingWords): string {
  return text.replace(/(?<=\d )[A-Za-z][A-Za-z0-9]*\b/g, (unit) => signs[unit] ?? unit)
}

function listOf(value: unknown): Written[] {
  return Array.isArray(value) ? value.map(writtenOf) : []
}

function writtenOf(value: unknown): Written {
  return typeof value === 'object' && value !== null ? (value as Written) : {}
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}
