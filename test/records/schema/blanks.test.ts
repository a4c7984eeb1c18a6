import { describe, expect, it } from 'vitest'
import { withoutBlanks } from '../../../src/records/schema/blanks.ts'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'

function filled(text: string, kind: 'lot' | 'control' | 'source' = 'lot') {
  const yaml = parseYaml(text)
  if ('fault' in yaml) throw new Error(yaml.fault.message)
  return withoutBlanks(kind, yaml.value)
}

const HEAD = `produced: { from: 2026-03-02, to: 2026-03-08 }
quantity: 1450 t
samples: [{ id: C, kind: composite }]
`

describe('withoutBlanks', () => {
  it('leaves out blank results and keeps the others', () => {
    const { value, blanks } = filled(
      `${HEAD}analyses: [{ laboratory: quay, sample: C, tested: 2026-03-10, results: { SiO2: 63.1 %, CaO: } }]`,
    )
    expect(value).toMatchObject({ analyses: [{ results: { SiO2: '63.1 %' } }] })
    expect(JSON.stringify(value)).not.toContain('CaO')
    expect(blanks).toEqual(['/analyses/0/results/CaO'])
  })
  it('leaves out a figure that names its mortar and states no value', () => {
    const { value } = filled(
      `${HEAD}analyses:
  - laboratory: quay
    sample: C
    tested: 2026-03-10
    results:
      strength-activity-index: [{ value: 84 %, condition: c311, age: 7 d }, { value: , condition: c311, age: 28 d }]
      water-requirement: { value: , condition: c311 }`,
    )
    expect(value).toMatchObject({
      analyses: [{ results: { 'strength-activity-index': [{ value: '84 %' }] } }],
    })
    expect(JSON.stringify(value)).not.toMatch(/28 d|water-requirement/)
  })
  it('leaves out an analysis or a mortar that nothing is written into', () => {
    const { value } = filled(
      `${HEAD}analyses: [{ laboratory: quay, sample: C, tested: , results: { SiO2: } }]
tests: [{ sample: C, condition: c311, control: , laboratory: quay, cast: , strength: [{ age: 7 d, specimens: { a: } }] }]`,
    )
    expect(Object.keys(value as object)).toEqual(['produced', 'quantity', 'samples'])
  })
  it('keeps what was begun, its blanks being faults', () => {
    const { value, blanks } = filled(
      `${HEAD}analyses: [{ laboratory: quay, sample: C, tested: , results: { SiO2: 63.1 % } }]`,
    )
    expect(value).toMatchObject({ analyses: [{ tested: '', results: { SiO2: '63.1 %' } }] })
    expect(blanks).toEqual([])
  })
  it('keeps a planned age of a mortar that was cast', () => {
    const { value } = filled(
      `${HEAD}tests: [{ sample: C, condition: c311, control: K1, laboratory: quay, cast: 2026-03-11, strength: [{ age: 7 d, tested: , specimens: { a: , b: } }] }]`,
    )
    expect(value).toMatchObject({ tests: [{ cast: '2026-03-11', strength: [{ age: '7 d' }] }] })
  })
  it('leaves out a blank item before others and says which', () => {
    const { value, items } = filled(
      `${HEAD}analyses:
  - { laboratory: quay, sample: C, tested: , results: { SiO2: } }
  - { laboratory: quay, sample: C, tested: 2026-03-10, results: { SiO2: 63.1 % } }`,
    )
    expect(value).toMatchObject({ analyses: [{ tested: '2026-03-10' }] })
    expect(items).toEqual(['/analyses/0'])
  })
  it('finds nothing written where only ids, kinds and ages are', () => {
    expect(
      filled(
        `produced: { from: , to: }
quantity:
samples: [{ id: C, kind: composite, taken: { from: , to: } }]
analyses: [{ laboratory: quay, sample: C, tested: , results: { strength-activity-index: { value: , condition: c311, age: 7 d } } }]`,
      ).value,
    ).toBeUndefined()
    expect(
      filled('condition: c311\nlaboratory: quay\ncement: { lot: }\ncast:\n', 'control').value,
    ).toBeUndefined()
  })
  it('takes the part behind a decimal comma for no blank', () => {
    const text = `${HEAD}shipments: [{ bill: B-1, date: 2026-03-21, mass: 24,8 t }]`
    expect(filled(text).value).toMatchObject({ shipments: [{ mass: 24, '8 t': '' }] })
  })
  it('takes for a blank what stands beside a number', () => {
    const text = HEAD.replace('kind: composite', 'kind: composite, increments: 16, by: ')
    expect(filled(text).value).toMatchObject({ samples: [{ id: 'C', kind: 'composite', increments: 16 }] })
    expect(filled(text).blanks).toEqual(['/samples/0/by'])
  })
  it('leaves a record of another kind as it is', () => {
    const { value, blanks } = filled('name:\nproducer: hill\nkind: slag\n', 'source')
    expect(value).toEqual({ name: '', producer: 'hill', kind: 'slag' })
    expect(blanks).toEqual([])
  })
})
