/**
 * The fonts of the site, cut down to the letters that its pages use: a page in English fetches some 10 KB a face
 * in place of 110, and asks for the rest only where it prints a letter from there.
 */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import subsetFont from 'subset-font'
import { ROOT } from './program.ts'

/** A face of the site: the file that it is cut from, the complete one for the web, the font that stands in. */
export interface Face {
  readonly name: string
  readonly family: 'Body' | 'Heading'
  readonly weight: 400 | 600
  readonly style: 'normal' | 'italic'
  /** Both as packages name them: a package may lie in any folder above. */
  readonly file: string
  readonly whole: string
  readonly standIn: StandIn
}

/** Fonts of a reader's machine under their full names, and in per cent what gives them a face's measures. */
interface StandIn {
  readonly fonts: readonly string[]
  readonly size: number
  readonly ascent: number
  readonly descent: number
}

export const FACES: readonly Face[] = [
  {
    name: 'body-400',
    family: 'Body',
    weight: 400,
    style: 'normal',
    file: 'source-sans/TTF/SourceSans3-Regular.ttf',
    whole: 'source-sans/WOFF2/TTF/SourceSans3-Regular.ttf.woff2',
    standIn: { fonts: ['Arial', 'Liberation Sans', 'Helvetica'], size: 91.9, ascent: 108.8, descent: 35.5 },
  },
  {
    name: 'body-600',
    family: 'Body',
    weight: 600,
    style: 'normal',
    file: 'source-sans/TTF/SourceSans3-Semibold.ttf',
    whole: 'source-sans/WOFF2/TTF/SourceSans3-Semibold.ttf.woff2',
    standIn: {
      fonts: ['Arial Bold', 'Liberation Sans Bold', 'Helvetica Bold'],
      size: 90,
      ascent: 111.1,
      descent: 36.2,
    },
  },
  {
    name: 'body-italic',
    family: 'Body',
    weight: 400,
    style: 'italic',
    file: 'source-sans/TTF/SourceSans3-It.ttf',
    whole: 'source-sans/WOFF2/TTF/SourceSans3-It.ttf.woff2',
    standIn: {
      fonts: ['Arial Italic', 'Liberation Sans Italic', 'Helvetica Oblique'],
      size: 91.6,
      ascent: 109.2,
      descent: 35.6,
    },
  },
  {
    name: 'heading-400',
    family: 'Heading',
    weight: 400,
    style: 'normal',
    file: 'source-serif/TTF/SourceSerif4Display-Regular.ttf',
    whole: 'source-serif/WOFF2/TTF/SourceSerif4Display-Regular.ttf.woff2',
    standIn: {
      fonts: ['Times New Roman', 'Liberation Serif', 'Times'],
      size: 98,
      ascent: 105.7,
      descent: 34.2,
    },
  },
  {
    name: 'heading-600',
    family: 'Heading',
    weight: 600,
    style: 'normal',
    file: 'source-serif/TTF/SourceSerif4Subhead-Semibold.ttf',
    whole: 'source-serif/WOFF2/TTF/SourceSerif4Subhead-Semibold.ttf.woff2',
    standIn: {
      fonts: ['Times New Roman Bold', 'Liberation Serif Bold', 'Times Bold'],
      size: 102,
      ascent: 101.6,
      descent: 32.8,
    },
  },
]

/** Signs that pages print in figures, units, formulas and sentences. */
const SIGNS = '\u00a0§°±²³µ·½×ΩΣρσ‑–—‘’“”•…′›←↑→↓−√≈≤≥⁻₁₂₃₄\u2009\u202f'

/** Latin-1 and Latin Extended-A for names of persons and places, Greek and signs of mathematics for formulas. */
const RARER = `${between(0xa1, 0x17f)}${between(0x391, 0x3c9)}\u0304‐‚„†″‹€™Ω∂∆∏∑∞∫≠⁰¹⁴⁵⁶⁷⁸⁹₀₅₆₇₈₉`

/** Letters of a face's two small files; the complete file has the others. */
export const LETTERS = {
  text: between(0x20, 0x7e) + SIGNS,
  further: [...RARER].filter((letter) => !SIGNS.includes(letter)).join(''),
} as const

export type Part = keyof typeof LETTERS

export const PARTS: readonly Part[] = ['text', 'further']

/** What the style sheets ask for, with what places accents and joins letters; small capitals and swashes stay out. */
const FEATURES = ['kern', 'lnum', 'tnum', 'liga', 'locl', 'ccmp', 'mark', 'mkmk']

/** Statement and address of the fonts' licence, beside the names that a font always keeps. */
const LICENCE_NAMES = [13, 14]

/**
 * @returns a WOFF2 file with those of the part's letters that the face has
 */
export function subsetOf(face: Face, part: Part): Promise<Buffer> {
  return subsetFont(readFileSync(resolve(ROOT, 'node_modules', face.file)), LETTERS[part], {
    targetFormat: 'woff2',
    keepFeatures: FEATURES,
    noHinting: true,
    preserveNameIds: LICENCE_NAMES,
  })
}

/** Code points of a part, or of all letters that no part has. */
export function unicodeRange(part: Part | 'others'): string {
  const codes = part === 'others' ? otherRuns() : runsOf(LETTERS[part])
  const hex = (code: number) => code.toString(16).toUpperCase()
  return codes.map(([from, to]) => (from === to ? `U+${hex(from)}` : `U+${hex(from)}-${hex(to)}`)).join(', ')
}

/** Neighbouring code points as runs, from the lowest on. */
function runsOf(letters: string): [number, number][] {
  const codes = new Set([...letters].map((letter) => letter.codePointAt(0) ?? 0))
  const runs: [number, number][] = []
  for (const code of [...codes].sort((a, b) => a - b)) {
    const last = runs.at(-1)
    if (last !== undefined && last[1] + 1 === code) last[1] = code
    else runs.push([code, code])
  }
  return runs
}

/** Control characters have no letter: asked for a line break in a list of choices, a browser would fetch the font. */
const FIRST_BEYOND = 0xa0

/** What lies between the runs of all parts; a browser asks for the next file as well where ranges overlap. */
function otherRuns(): [number, number][] {
  const held = runsOf(PARTS.map((part) => LETTERS[part]).join(''))
  const ends = [...held.slice(1).map(([from]) => from - 1), 0x10ffff]
  return held
    .map(([, to], index): [number, number] => [Math.max(to + 1, FIRST_BEYOND), ends[index] ?? to])
    .filter(([from, to]) => from <= to)
}

function between(from: number, to: number): string {
  return Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index)).join('')
}
