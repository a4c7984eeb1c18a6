/** Marks and letters of charts against their ground, in light and dark: WCAG 2.2, 1.4.3 and 1.4.11. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const [site, source, charts, certificate] = ['site', 'source', 'charts', 'certificate'].map((name) =>
  readFileSync(`src/styles/${name}.css`, 'utf8'),
) as [string, string, string, string]

/** The colours of both schemes: light first. */
const schemes = [...site.matchAll(/:root \{([^}]*)\}/g)]
  .map(
    ([, body = '']) =>
      new Map([...body.matchAll(/--([a-z]+): (#[0-9a-f]{6})/g)].map(([, name, colour]) => [name, colour])),
  )
  .filter((colours) => colours.has('paper'))

/** Relative luminance of a colour, WCAG 2.2. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((one, other) => one - other)
  return (light + 0.05) / (dark + 0.05)
}

describe('contrast', () => {
  it('is 21 of black on white, and 4.54 of #767676, as W3C states', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6)
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
  })
})

describe('the colours of charts', () => {
  it('stand out from the paper: marks and lines by 3 to 1, letters by 4.5 to 1, in either scheme', () => {
    expect(schemes).toHaveLength(2)
    for (const colours of schemes) {
      const against = (name: string) => contrast(colours.get(name) ?? '', colours.get('paper') ?? '')
      for (const mark of ['ink', 'soft', 'series', 'limit', 'pale', 'accent'])
        expect(against(mark), mark).toBeGreaterThanOrEqual(3)
      for (const letters of ['ink', 'soft', 'limit', 'accent'])
        expect(against(letters), letters).toBeGreaterThanOrEqual(4.5)
    }
  })

  it('are not made paler again: only grounds and grids, which carry no reading, are transparent', () => {
    const sheets = [source, charts, certificate].join('\n')
    const pale = [...sheets.matchAll(/([^{}]+)\{[^{}]*opacity: \.\d+/g)].map(([, name = '']) => name.trim())
    expect(pale).toEqual([
      '.fluid .event',
      '.fluid path.band',
      '.failed-lot',
      '.chart .band',
      '.strip-allowed',
    ])
  })

  it('are dashed in the colour of limits for limits alone', () => {
    const sheets = [source, charts, certificate].join('\n')
    const dashed = [...sheets.matchAll(/([^{}]+)\{([^{}]*stroke-dasharray[^{}]*)\}/g)]
      .filter(([, , body = '']) => body.includes('--limit'))
      .map(([, name = '']) => name.trim())
    expect(dashed.every((name) => name.includes('limit'))).toBe(true)
    expect(dashed.length).toBeGreaterThan(0)
  })
})
