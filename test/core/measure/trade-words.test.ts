import { describe, expect, it } from 'vitest'
import { PROPERTIES, type PropertyKey } from '../../../src/core/measure/properties.ts'
import { tradeWord } from '../../../src/core/measure/trade-words.ts'

const KEYS = Object.keys(PROPERTIES) as PropertyKey[]

describe('tradeWord(text)', () => {
  it('knows each property by its key, its title and its symbol', () => {
    for (const key of KEYS) {
      const { title, symbol } = PROPERTIES[key] as { title: string; symbol?: string }
      expect([key, title, symbol ?? key].map(tradeWord)).toEqual([
        { sure: key },
        { sure: key },
        { sure: key },
      ])
    }
  })

  it.each([
    ['LOI', 'loss-on-ignition'],
    ['L.O.I. (%)', 'loss-on-ignition'],
    ['loi %', 'loss-on-ignition'],
    ['Loss on Ignition, wt %', 'loss-on-ignition'],
    ['SO₃', 'SO3'],
    ['SO3 (wt.%)', 'SO3'],
    ['sulphur trioxide', 'SO3'],
    ['Al₂O₃ mass-%', 'Al2O3'],
    ['alumina', 'Al2O3'],
    ['f-CaO', 'free-CaO'],
    ['free lime', 'free-CaO'],
    ['Na2Oeq', 'alkali-equivalent'],
    ['Na₂O eq', 'alkali-equivalent'],
    ['Total alkalies (%)', 'alkali-equivalent'],
    ['Available alkali, %', 'available-alkalis'],
    ['retained-325', 'residue-45um'],
    ['+325', 'residue-45um'],
    ['+ 325 mesh', 'residue-45um'],
    ['% + 325', 'residue-45um'],
    ['% retained on No. 325', 'residue-45um'],
    ['Fineness, retained on No. 325 (%)', 'residue-45um'],
    ['Fineness (retained on 45 µm)', 'residue-45um'],
    ['45 μm residue', 'residue-45um'],
    ['R45 um', 'residue-45um'],
    ['R45', 'residue-45um'],
    ['+45', 'residue-45um'],
    ['passing 45', 'passing-45um'],
    ['45 micron wet sieve residue', 'residue-45um'],
    ['-325', 'passing-45um'],
    ['passing #325', 'passing-45um'],
    ['% passing 45um', 'passing-45um'],
    ['SAI', 'strength-activity-index'],
    ['SAI 7 d', 'strength-activity-index'],
    ['SAI-7d', 'strength-activity-index'],
    ['7-day SAI', 'strength-activity-index'],
    ['SAI (28 days), %', 'strength-activity-index'],
    ['Strength Activity Index at 28 d', 'strength-activity-index'],
    ['Blaine (m²/kg)', 'specific-surface'],
    ['Blaine cm2/g', 'specific-surface'],
    ['fineness (m2/kg)', 'specific-surface'],
    ['Density (g/cm³)', 'density'],
    ['Le Chatelier (mm)', 'soundness-expansion'],
    ['soundness (autoclave)', 'autoclave-expansion'],
    ['Water Req. (% of control)', 'water-requirement'],
    ['relative bulk resistivity', 'resistivity-index'],
    ['S+A+F', 'oxide-sum'],
    ['Ca(OH)2 consumption', 'lime-consumption'],
  ] satisfies [string, PropertyKey][])('reads %s as %s', (text, sure) => {
    expect(tradeWord(text)).toEqual({ sure })
  })

  it.each([
    ['fineness', ['residue-45um', 'specific-surface']],
    ['Fineness (%)', ['residue-45um', 'specific-surface']],
    ['325', ['residue-45um', 'passing-45um']],
    ['No. 325 sieve', ['residue-45um', 'passing-45um']],
    ['fineness 45 µm', ['residue-45um', 'passing-45um']],
    ['S.G.', ['density']],
    ['specific-gravity', ['density']],
    ['Alkalis (%)', ['available-alkalis', 'alkali-equivalent']],
    ['sulphur', ['SO3', 'sulfide']],
    ['lime', ['CaO', 'free-CaO']],
    ['soundness', ['autoclave-expansion', 'soundness-expansion']],
    ['unburnt carbon', ['loss-on-ignition']],
    ['MnO', ['Mn2O3']],
  ])('asks which is meant by %s', (text, either) => {
    expect(tradeWord(text)).toMatchObject({ either, why: expect.stringMatching(/^[^.]+(?:\.\d+[^.]+)*$/) })
  })

  it.each([
    '',
    ' ',
    '%',
    '(%)',
    'remarks',
    'cube',
    'lot',
    'date',
    '28 d',
    '160',
    '3 d',
    'toString',
    'R',
    '+',
    'a',
  ])('gives undefined for %j, which names no property', (text) => {
    expect(tradeWord(text)).toBeUndefined()
  })

  // Ratios of molar masses: O 15.999, S 32.06, Mn 54.938, Fe 55.845 (IUPAC 2021, abridged).
  it('states factors between oxides that follow from molar masses', () => {
    const [O, S, Mn, Fe] = [15.999, 32.06, 54.938, 55.845]
    const factors = (text: string) => {
      const found = tradeWord(text)
      const why = found !== undefined && 'why' in found ? found.why : ''
      return (why.match(/\d+\.\d+/g) ?? []).map(Number)
    }
    const mn2o3 = Mn + 1.5 * O
    expect(factors('MnO')).toEqual(
      [mn2o3 / (Mn + O), mn2o3 / (Mn + 2 * O), mn2o3 / Mn].map((factor) => Number(factor.toFixed(3))),
    )
    const fe2o3 = Fe + 1.5 * O
    expect(factors('FeO')).toEqual([fe2o3 / Fe, fe2o3 / (Fe + O)].map((factor) => Number(factor.toFixed(3))))
    const so3 = S + 3 * O
    expect(factors('SO4')).toEqual([Number((so3 / (S + 4 * O)).toFixed(3))])
    expect(factors('sulfur')).toEqual([Number((so3 / S).toFixed(1))])
  })
})
