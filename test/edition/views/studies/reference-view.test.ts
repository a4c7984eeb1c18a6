import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../../src/edition/compute.ts'
import { studyPage } from '../../../../src/edition/views/studies/study-page.ts'
import { loadStudies, STUDY } from '../../../records/studies/study-folder.ts'

const water = (lost: number) =>
  `bound-water: { crucibles: [{ crucible: 20 g, dried: 30 g, ignited: ${(30 - lost).toFixed(1)} g }] }`
const strength = 'lime-strength: { area: 2500 mm2, loads: [20 kN] }'
const MATERIALS = `materials:
  Q1: { title: quartz, class: inert, shown-by: heat, heat: 8 J/g, calcium-hydroxide: 1 g/100 g, reference: { ${water(0.1)} } }
  W1: { title: tuff, class: weak, heat: 200 J/g, reference: { ${water(0.3)}, ${strength} } }
  A1: { title: ash, class: reactive, shown-by: heat, heat: 300 J/g, calcium-hydroxide: 50 g/100 g, reference: { ${water(0.2)}, ${strength} } }
`
const TABLE = `material,age,strength (MPa)
control,28 d,50
Q1,28 d,40
W1,28 d,39
A1,28 d,45
`

function reference(materials: string) {
  const study = STUDY.replace(/materials:\n(?: {2}.*\n)+/, materials)
  const { records, diagnostics } = loadStudies({
    'S.yaml': `${study}table: { file: S.csv }\n`,
    'S.csv': TABLE,
  })
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
  return studyPage(computeEdition(records, { program: 'test' }), 'S').screening?.reference ?? []
}

describe('an index against the reference tests', () => {
  // By hand: indices 80, 78 and 90; threshold 85 (root of 80 × 90, by steps of 5). Heat 8, 200, 300 ranks 1, 2, 3
  // against 2, 1, 3: 1 − 6 × 2/24 = 0.5; boundary 154, so W1 lies above it and below the threshold. Bound water
  // 1, 3, 2 ranks 1, 3, 2 against the same: 1 − 6 × 6/24 = −0.5; boundary 1.5, W1 above it again.
  it('has a line for each test that three materials have, from readings and as reported alike', () => {
    const [route] = reference(MATERIALS)
    expect(
      route?.lines.map(({ reference, n, order, disagreements }) => [reference, n, order, disagreements]),
    ).toEqual([
      ['Heat', '3', '0.50', 'below by index: W1'],
      ['Bound water', '3', '−0.50', 'below by index: W1'],
    ])
  })
  it('draws the two that most materials have, and says which have none', () => {
    const more = MATERIALS.replace(
      'tuff, class: weak, ',
      'tuff, class: weak, calcium-hydroxide: 20 g/100 g, ',
    ).replace('heat: 8 J/g, ', '')
    const all = reference(more)[0]
    expect(all?.lines.map((line) => line.reference)).toEqual(['Calcium hydroxide consumed', 'Bound water'])
    expect(all?.pictures.map(({ title }) => title.replace(/^.*, against the /, ''))).toEqual([
      'calcium hydroxide consumed (g/100 g)',
      'bound water (g/100 g)',
    ])
    const three = reference(
      MATERIALS.replace('class: weak, heat', 'class: weak, calcium-hydroxide: 20 g/100 g, heat'),
    )[0]
    expect(three?.lines).toHaveLength(3)
    expect(three?.pictures.map(({ boundaryLabel }) => boundaryLabel)).toEqual([
      'boundary 154 J/g',
      'boundary 25.5 g/100 g',
    ])
  })
})
