import { readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Face, FACES, type Part, PARTS } from '../../src/commands/font-faces.ts'
import { ROOT } from '../../src/commands/program.ts'
import { paths } from '../../src/edition/shape/addresses.ts'
import { run } from '../commands/run-command.ts'
import { kindsOfPage } from './kinds-of-page.ts'
import { eachPage, siteInBrowser } from './site-in-browser.ts'

const STYLES = join(ROOT, 'src/styles')
/**
 * Widths of the letters from space to tilde, in 1/2048 of the letter size, of Arimo and Tinos as npm packages
 * @fontsource/arimo and @fontsource/tinos 5.3.0 hold them; both have the widths of Arial and Times New Roman.
 */
const STAND_IN_WIDTHS = JSON.parse(
  readFileSync(join(import.meta.dirname, 'stand-in-widths.json'), 'utf8'),
) as Readonly<Record<string, readonly number[]>>

const demo = siteInBrowser('networkidle')

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

const small = (face: Face, part: Part) => join(STYLES, `fonts/${face.name}-${part}.woff2`)

describe('the fonts', () => {
  it('of the text hold every sign that a certificate prints, in the file that each page fetches', () => {
    for (const face of FACES.filter(({ family }) => family === 'Body'))
      expect({ face: face.name, missing: missingSigns(small(face, 'text')) }).toEqual({
        face: face.name,
        missing: [],
      })
  })
  it('of headings lack one sign, which the text font behind them gives, so that no letter comes from the machine', () => {
    const heading = FACES.filter(({ family }) => family === 'Heading')
    expect(heading.map((face) => missingSigns(small(face, 'text')))).toEqual(heading.map(() => ['⁻']))
    expect(readFileSync(join(STYLES, 'site.css'), 'utf8')).toContain('--serif: "Heading", "Body",')
  })
  it('are static, since a variable font becomes outlines in a PDF', () => {
    for (const face of FACES)
      for (const file of [...PARTS.map((part) => small(face, part)), join(ROOT, 'node_modules', face.whole)])
        expect([...woff2Tables(readFileSync(file)).keys()]).not.toContain('fvar')
  })
  it('say in their own tables under which licence they stand, the small ones too', () => {
    for (const face of FACES)
      for (const part of PARTS) {
        const name = woff2Tables(readFileSync(small(face, part))).get('name') ?? Buffer.alloc(0)
        expect(
          name
            .subarray(0, name.length & ~1)
            .swap16()
            .toString('utf16le'),
        ).toContain('SIL Open Font License')
      }
  })
  it('stand beside the style sheet as the complete fonts and the list of letters make them', async () => {
    expect((await run('fonts', '--check')).out).toBe('')
  })
})

/** Addresses of the fonts that a page fetched, with the bytes of their files. */
async function fontsOf(page: Page): Promise<{ path: string; bytes: number }[]> {
  const names = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map((entry) => entry.name)
      .filter((name) => name.endsWith('.woff2')),
  )
  return names.map((name) => {
    const path = name.replace(demo.site.url, '')
    return { path, bytes: statSync(join(demo.site.folder, path)).size }
  })
}

/** Texts of the pages by the face that they are set in. */
function textsByFace(names: readonly string[]): Record<string, string> {
  const texts: Record<string, string> = Object.fromEntries(names.map((name) => [name, '']))
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
    const style = node.parentElement && getComputedStyle(node.parentElement)
    if (!style || node.parentElement?.checkVisibility() !== true) continue
    const family = style.fontFamily.startsWith('Heading') ? 'heading' : 'body'
    const name = `${family}-${style.fontStyle === 'italic' ? 'italic' : style.fontWeight}`
    if (name in texts) texts[name] += node.textContent?.replaceAll(/[^ -~]+/g, '') ?? ''
  }
  return texts
}

interface Visit {
  readonly path: string
  readonly fonts: Awaited<ReturnType<typeof fontsOf>>
  readonly texts: Readonly<Record<string, string>>
}

async function visitAgain(page: Page): Promise<Visit['fonts']> {
  await page.reload({ waitUntil: 'networkidle' })
  await page.evaluate(() => document.fonts.ready)
  return fontsOf(page)
}

function isComplete(font: { readonly path: string }): boolean {
  return font.path.includes('.ttf.')
}

async function visit(path: string): Promise<Visit> {
  const page = await demo.open(path)
  await page.evaluate(() => document.fonts.ready)
  // On a busy machine optional fonts can come too late, and the browser then asks for complete ones as well: what a page
  // needs shows at a later visit, when they lie at hand. A page that needs a complete font asks for it every time.
  let fonts = await visitAgain(page)
  for (let more = 0; more < 9 && fonts.some(isComplete); more += 1) fonts = await visitAgain(page)
  const names = FACES.map((face) => face.name)
  const texts = await page.evaluate(textsByFace, names)
  await page.context().close()
  return { path, fonts, texts }
}

/** One page of each kind, and all methods: their articles alone print italics, a few words each. */
let visits: readonly Visit[] = []

beforeAll(async () => {
  visits = await eachPage([...new Set([...kindsOfPage(demo.site.edition), ...methodPages()])], visit)
})

function methodPages(): string[] {
  return demo.site.edition.methods.map(({ id }) => paths.method(id))
}

function visitsTo(pages: readonly string[]): Visit[] {
  return visits.filter(({ path }) => pages.includes(path))
}

describe('a page', () => {
  it('fetches at most 60 KB of fonts, on one page of each kind that is written in English', () => {
    const kinds = visitsTo(kindsOfPage(demo.site.edition))
    expect(kinds.length).toBeGreaterThan(30)
    for (const { path, fonts } of kinds) {
      const told = [path, ...fonts.map((font) => font.path)].join(' ')
      expect(fonts.length, told).toBeGreaterThanOrEqual(3)
      expect(fonts.reduce((sum, { bytes }) => sum + bytes, 0) / 1000, told).toBeLessThanOrEqual(60)
    }
  })
  it('about a method prints no letter that only the complete font has, in its formulas either', () => {
    const methods = visitsTo(methodPages())
    expect(methods.length).toBeGreaterThan(5)
    const complete = methods.filter(({ fonts }) => fonts.some(isComplete))
    expect(complete.map(({ path }) => path)).toEqual([])
  })
  it('prints a rarer letter from a second file and any other from the complete font, fetched only then', async () => {
    const page = await demo.open('look-up/')
    const fetchedFor = async (letter: string) => {
      const before = (await fontsOf(page)).length
      await page.evaluate((text) => document.fonts.load('16px Body', text), letter)
      return (await fontsOf(page))
        .slice(before)
        .map(({ path }) => path.replace(/^_astro\/|\.[^.]*\.woff2$/g, ''))
    }
    expect(await fetchedFor('Ab≥₂')).toEqual([])
    expect(await fetchedFor('é')).toEqual(['body-400-further'])
    expect(await fetchedFor('Ж')).toEqual(['SourceSans3-Regular.ttf'])
    await page.context().close()
  })
})

describe('a font of the machine that stands in', () => {
  it('sets the text of the pages as wide as the font that it stands in for, within one per cent', async () => {
    const page = await demo.open('')
    for (const face of FACES) {
      const text = visits.map(({ texts }) => texts[face.name] ?? '').join('')
      expect(text.length, face.name).toBeGreaterThan(100)
      const width = await page.evaluate(
        async ([font, letters]) => {
          await document.fonts.load(font, letters)
          const context = document.createElement('canvas').getContext('2d')
          if (context === null) return 0
          context.font = font
          return context.measureText(letters).width
        },
        [`${face.style} ${face.weight} 100px ${face.family}`, text] as const,
      )
      const standIn = [...text].reduce(
        (sum, letter) => sum + (STAND_IN_WIDTHS[face.name]?.[(letter.codePointAt(0) ?? 0) - 32] ?? 0),
        0,
      )
      const ratio = ((standIn / 2048) * 100 * (face.standIn.size / 100)) / width
      expect(Math.abs(ratio - 1), face.name).toBeLessThan(0.01)
    }
    await page.context().close()
  })

  it('has lines as high as those of the font that it stands in for, within one per cent', async () => {
    const page = await demo.open('')
    for (const { name, family, weight, style, standIn } of FACES) {
      const [own, other] = await page.evaluate(
        async ({ family, weight, style, standIn }) => {
          const url = performance
            .getEntriesByType('resource')
            .find((entry) => entry.name.endsWith('.woff2'))?.name
          const probe = new FontFace('Probe', `url(${url})`, {
            ascentOverride: `${standIn.ascent}%`,
            descentOverride: `${standIn.descent}%`,
            lineGapOverride: '0%',
          })
          Object.assign(probe, { sizeAdjust: `${standIn.size}%` })
          document.fonts.add(await probe.load())
          const height = (font: string) => {
            const line = document.createElement('p')
            line.textContent = 'Lot'
            Object.assign(line.style, { font, lineHeight: 'normal', position: 'absolute' })
            document.body.append(line)
            return line.getBoundingClientRect().height
          }
          await document.fonts.load(`${style} ${weight} 100px ${family}`)
          return [height(`${style} ${weight} 100px ${family}`), height('100px Probe')]
        },
        { family, weight, style, standIn },
      )
      expect(Math.abs((other ?? 0) / (own ?? 1) - 1), name).toBeLessThan(0.01)
      await page.reload()
    }
    await page.context().close()
  })
})
