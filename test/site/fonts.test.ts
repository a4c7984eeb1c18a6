import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../src/commands/program.ts'

const STYLES = join(ROOT, 'src/styles')
const FILES = [...readFileSync(join(STYLES, 'fonts.css'), 'utf8').matchAll(/url\("([^"]+)"\)/g)].map(
  (match) => join(STYLES, match[1] ?? ''),
)

/** Signs that certificates print beyond plain letters and digits. */
const SIGNS = '≥≤±₂₃ρΩµ°−×·–—√→≈⁻′²³“”’…\u00a0\u2009'

/**
 * The tables of a WOFF2 file by tag, as the W3C recommendation WOFF File Format 2.0 (section 4) lays them
 * out.
 */
function woff2Tables(file: Buffer): Map<string, Buffer> {
  const count = file.readUInt16BE(12)
  const compressed = file.readUInt32BE(20)
  let at = 48
  const base128 = () => {
    let value = 0
    for (let byte = 0x80; (byte & 0x80) !== 0; ) {
      byte = file[at] ?? 0
      at += 1
      value = value * 128 + (byte & 0x7f)
    }
    return value
  }
  const entries: { tag: string; length: number }[] = []
  for (let index = 0; index < count; index += 1) {
    const flags = file[at] ?? 0
    at += 1
    const known = flags & 0x3f
    const tag = known === 0x3f ? file.toString('latin1', at, at + 4) : (KNOWN_TAGS[known] ?? '')
    if (known === 0x3f) at += 4
    const length = base128()
    // glyf and loca are transformed in version 0, all other tables in any version but 0.
    const transformed = tag === 'glyf' || tag === 'loca' ? flags >> 6 === 0 : flags >> 6 !== 0
    entries.push({ tag, length: transformed ? base128() : length })
  }
  const data = brotliDecompressSync(file.subarray(at, at + compressed))
  let offset = 0
  return new Map(
    entries.map(({ tag, length }) => {
      const table = data.subarray(offset, offset + length)
      offset += length
      return [tag, table] as const
    }),
  )
}

/**
 * The first entries of the list of known tags, which the tables asked for here and their neighbours are
 * among.
 */
const KNOWN_TAGS = [
  'cmap',
  'head',
  'hhea',
  'hmtx',
  'maxp',
  'name',
  'OS/2',
  'post',
  'cvt ',
  'fpgm',
  'glyf',
  'loca',
  'prep',
  'CFF ',
  'VORG',
  'EBDT',
  'EBLC',
  'gasp',
  'hdmx',
  'kern',
  'LTSH',
  'PCLT',
  'VDMX',
  'vhea',
  'vmtx',
  'BASE',
  'GDEF',
  'GPOS',
  'GSUB',
  'EBSC',
  'JSTF',
  'MATH',
  'CBDT',
  'CBLC',
  'COLR',
  'CPAL',
  'SVG ',
  'sbix',
  'acnt',
  'avar',
  'bdat',
  'bloc',
  'bsln',
  'cvar',
  'fdsc',
  'feat',
  'fmtx',
  'fvar',
  'gvar',
]

/** Ranges of code points with a glyph, from the format 4 subtables of cmap (OpenType specification, cmap). */
function ranges(cmap: Buffer): [number, number][] {
  return Array.from({ length: cmap.readUInt16BE(2) }, (_, index) => cmap.readUInt32BE(4 + 8 * index + 4))
    .filter((offset) => cmap.readUInt16BE(offset) === 4)
    .flatMap((offset) => {
      const segments = cmap.readUInt16BE(offset + 6) / 2
      return Array.from({ length: segments }, (_, index): [number, number] => [
        cmap.readUInt16BE(offset + 16 + 2 * segments + 2 * index),
        cmap.readUInt16BE(offset + 14 + 2 * index),
      ])
    })
}

function missingSigns(file: string): string[] {
  const held = ranges(woff2Tables(readFileSync(file)).get('cmap') ?? Buffer.alloc(4))
  return [...SIGNS].filter(
    (sign) =>
      !held.some(
        ([first, last]) => first <= (sign.codePointAt(0) ?? 0) && (sign.codePointAt(0) ?? 0) <= last,
      ),
  )
}

describe('the fonts', () => {
  it('of the text hold every sign that a certificate prints', () => {
    const body = FILES.filter((file) => file.includes('SourceSans3'))
    expect(body.length).toBeGreaterThanOrEqual(3)
    for (const file of body)
      expect({ file: basename(file), missing: missingSigns(file) }).toEqual({
        file: basename(file),
        missing: [],
      })
  })
  it('of headings lack one sign, which the text font behind them gives, so that no letter comes from the machine', () => {
    const heading = FILES.filter((file) => file.includes('SourceSerif4'))
    expect(heading.map(missingSigns)).toEqual(heading.map(() => ['⁻']))
    expect(readFileSync(join(STYLES, 'site.css'), 'utf8')).toContain('--serif: "Heading", "Body",')
  })
  it('are static, since a variable font becomes outlines in a PDF', () => {
    for (const file of FILES) expect([...woff2Tables(readFileSync(file)).keys()]).not.toContain('fvar')
  })
})
