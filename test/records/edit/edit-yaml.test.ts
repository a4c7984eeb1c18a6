import fc from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { JSON_SCHEMA, load } from 'js-yaml'
import { describe, expect, it } from 'vitest'
import { type Edit, editYaml, EditFault } from '../../../src/records/edit/edit-yaml.ts'
import { type Plain, writeYaml } from '../../../src/records/edit/write-yaml.ts'

const LOT = `# written by the night shift
produced: { from: 2025-02-25, to: 2025-03-03 }   # seven days
quantity: 870 t

samples:
  - { id: C, kind: composite } # split in two

analyses:
  - laboratory: works   # ours
    # after the new sieve
    results:
      SiO2: 52.690 %  # written with three decimals
      CaO: 5.48 %

tests:
  - sample: C
    strength:
      - { age: 7 d, specimens: { d: 62.0 kN, e: "63.0 kN" } }
`

const ORDER = ['class', 'produced', 'quantity', 'silo', 'samples', 'analyses', 'tests', 'shipments']
const order = (path: readonly unknown[]) => (path.length === 0 ? ORDER : undefined)

describe('editYaml', () => {
  it('exchanges a value and leaves every other sign as it was', () => {
    expect(editYaml(LOT, [{ set: ['analyses', 0, 'results', 'CaO'], to: '5.51 %' }])).toBe(
      LOT.replace('5.48', '5.51'),
    )
    expect(editYaml(LOT, [{ set: ['tests', 0, 'strength', 0, 'specimens', 'e'], to: '64.1 kN' }])).toBe(
      LOT.replace('"63.0 kN"', '64.1 kN'),
    )
  })
  it('writes an entry within braces behind the others, quoted where a comma would part it', () => {
    expect(editYaml(LOT, [{ set: ['samples', 0, 'by'], to: 'A. Hale, foreman' }])).toBe(
      LOT.replace('kind: composite }', 'kind: composite, by: "A. Hale, foreman" }'),
    )
  })
  it('puts a new section where the order of keys wants it, apart from the one before it', () => {
    expect(editYaml(LOT, [{ set: ['silo'], to: 'V1' }], { order })).toBe(
      LOT.replace('quantity: 870 t\n', 'quantity: 870 t\nsilo: V1\n'),
    )
    expect(editYaml(LOT, [{ set: ['shipments'], to: [{ bill: 'BL-1', mass: '25 t' }] }], { order })).toBe(
      `${LOT}\nshipments:\n  - { bill: BL-1, mass: 25 t }\n`.replace(
        '"63.0 kN" } }\n\n',
        '"63.0 kN" } }\n\n',
      ),
    )
    expect(editYaml(LOT, [{ set: ['class'], to: 'F' }], { order })).toBe(
      LOT.replace('produced:', 'class: F\nproduced:'),
    )
  })
  it('adds the later age to the test that it belongs to', () => {
    const item = { age: '28 d', specimens: { a: '85.8 kN', b: '84.8 kN' } }
    expect(editYaml(LOT, [{ append: ['tests', 0, 'strength'], item }])).toBe(
      `${LOT}      - { age: 28 d, specimens: { a: 85.8 kN, b: 84.8 kN } }\n`,
    )
  })
  it('adds several items at once, in order, and makes the list where there is none', () => {
    const edits = ['BL-1', 'BL-2'].map((bill): Edit => ({ append: ['shipments'], item: { bill } }))
    expect(editYaml('quantity: 1 t', edits)).toBe(
      'quantity: 1 t\n\nshipments:\n  - { bill: BL-1 }\n  - { bill: BL-2 }',
    )
    expect(editYaml('a: [1, 2] # few\n', [{ append: ['a'], item: 3 }])).toBe('a: [1, 2, 3] # few\n')
    expect(editYaml('a: []\n', [{ append: ['a'], item: 'x' }])).toBe('a: [ x ]\n')
  })
  it('changes of a mapping only what differs', () => {
    const to = { laboratory: 'works', results: { SiO2: '52.690 %', 'loss-on-ignition': '2.59 %' } }
    expect(editYaml(LOT, [{ set: ['analyses', 0], to }])).toBe(
      LOT.replace('CaO: 5.48 %', 'loss-on-ignition: 2.59 %'),
    )
  })
  it('removes an entry with its remark and line, and of two blank lines one', () => {
    expect(editYaml(LOT, [{ remove: ['analyses', 0, 'results', 'SiO2'] }])).toBe(
      LOT.replace('      SiO2: 52.690 %  # written with three decimals\n', ''),
    )
    expect(editYaml(LOT, [{ remove: ['samples'] }])).toBe(
      LOT.replace('samples:\n  - { id: C, kind: composite } # split in two\n\n', ''),
    )
    expect(editYaml('a:\n  - b: 1\n    c: 2\n', [{ remove: ['a', 0, 'b'] }])).toBe('a:\n  - c: 2\n')
    expect(editYaml('a: { b: 1, c: 2 }\n', [{ remove: ['a', 'c'] }])).toBe('a: { b: 1 }\n')
    expect(editYaml('a: { b: 1 }\n', [{ remove: ['a', 'b'] }])).toBe('a: {}\n')
  })
  it('makes the mappings that a path lacks, and fills an empty value', () => {
    expect(editYaml('a:\nb: 1\n', [{ set: ['a', 'x', 'y'], to: 'z' }])).toBe('a:\n  x: { y: z }\nb: 1\n')
    expect(editYaml('a:   # to come\nb: 1\n', [{ set: ['a'], to: '5 %' }])).toBe('a: 5 %   # to come\nb: 1\n')
    expect(editYaml('# nothing yet\n', [{ set: ['a'], to: '1 t' }])).toBe('# nothing yet\na: 1 t\n')
    expect(editYaml('', [{ set: ['a'], to: '1 t' }])).toBe('a: 1 t\n')
  })
  it('keeps line ends as the file has them, and text of several lines whole', () => {
    expect(editYaml('a: 1\r\nb: 2\r\n', [{ set: ['c'], to: { d: 'x\ny' } }])).toBe(
      'a: 1\r\nb: 2\r\n\r\nc:\r\n  d: |-\r\n    x\r\n    y\r\n',
    )
    expect(editYaml('a: |\n  one\n  two\n\nb: 2\n', [{ set: ['a'], to: 'three' }])).toBe('a: three\n\nb: 2\n')
  })
  it('says so where a text cannot be read or a path leads nowhere', () => {
    expect(() => editYaml('a: [1', [{ set: ['a'], to: 1 }])).toThrow(EditFault)
    expect(() => editYaml('a: 1\n', [{ set: ['a', 'b'], to: 1 }])).toThrow(EditFault)
    expect(() => editYaml('a: [1]\n', [{ set: ['a', 3], to: 1 }])).toThrow(EditFault)
    expect(() => editYaml('a: 1\n', [{ append: ['a'], item: 1 }])).toThrow(EditFault)
  })

  it('gives back what was put in, for any value at any place of the records of the demo', () => {
    const texts = lotTexts()
    let edited = 0
    fc.assert(
      fc.property(fc.nat(texts.length - 1), fc.nat(), plain(), (lot, which, to) => {
        const text = texts[lot] ?? ''
        const value = load(text, { schema: JSON_SCHEMA }) as Plain
        const paths = pathsIn(value)
        const path = paths[which % paths.length] ?? []
        const after = editYaml(text, [{ set: path, to }])
        edited += 1
        expect(at(load(after, { schema: JSON_SCHEMA }) as Plain, path)).toEqual(to)
        // The same value put back is the same record again.
        const back = editYaml(after, [{ set: path, to: at(value, path) as Plain }])
        expect(load(back, { schema: JSON_SCHEMA })).toEqual(value)
      }),
      { numRuns: 400, seed: 5 },
    )
    expect(edited).toBeGreaterThan(300)
  })
  it('keeps each remark of a record through edits elsewhere', () => {
    fc.assert(
      fc.property(fc.array(plain(), { minLength: 1, maxLength: 4 }), (values) => {
        const after = editYaml(
          LOT,
          values.map((to, index): Edit => ({ set: ['analyses', 0, 'results', `x-${index}`], to })),
        )
        for (const remark of LOT.matchAll(/#.*$/gm)) expect(after).toContain(remark[0])
        expect(after).toContain('SiO2: 52.690 %  # written')
      }),
      { numRuns: 200, seed: 7 },
    )
  })
  it('removes any member of any record, and nothing else', () => {
    for (const text of lotTexts().slice(0, 12)) {
      const value = load(text, { schema: JSON_SCHEMA }) as Plain
      for (const path of pathsIn(value)) {
        const expected = load(text, { schema: JSON_SCHEMA }) as Plain
        drop(expected, path)
        expect(load(editYaml(text, [{ remove: path }]), { schema: JSON_SCHEMA })).toEqual(expected)
      }
    }
  })
})

describe('writeYaml', () => {
  it('lays a record out as one is written by hand, and reads back the same', () => {
    const record = {
      produced: { from: '2025-02-25', to: '2025-03-03' },
      quantity: '870 t',
      samples: [{ id: 'C', kind: 'composite', taken: { from: '2025-02-25T06:00', to: '2025-03-03T14:30' } }],
      tests: [{ sample: 'C', strength: [{ age: '7 d', specimens: { d: '62.0 kN', e: '> 63 kN' } }] }],
      bill: '007',
    }
    expect(writeYaml(record)).toBe(`produced: { from: 2025-02-25, to: 2025-03-03 }
quantity: 870 t
samples:
  - { id: C, kind: composite, taken: { from: 2025-02-25T06:00, to: 2025-03-03T14:30 } }
tests:
  - sample: C
    strength:
      - { age: 7 d, specimens: { d: 62.0 kN, e: "> 63 kN" } }
bill: 007
`)
  })
  it('writes any value so that it reads back as it was', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ minLength: 1 }), plain()), (value) => {
        expect(load(writeYaml(value), { schema: JSON_SCHEMA })).toEqual({ ...value })
      }),
      { numRuns: 500, seed: 11 },
    )
  })
})

/** Texts of the demo's lots, a few of each source. */
function lotTexts(): string[] {
  const folder = join(import.meta.dirname, '../../../content/lots')
  return readdirSync(folder).flatMap((source) =>
    readdirSync(join(folder, source))
      .slice(0, 2)
      .map((file) => readFileSync(join(folder, source, file), 'utf8')),
  )
}

function plain(): fc.Arbitrary<Plain> {
  const scalar = fc.oneof(
    fc.constantFrom(
      '2.50 %',
      '< 0.1 %',
      'a: b',
      'x # y',
      '- z',
      '007',
      '1e3',
      'yes',
      'null',
      '"',
      "'",
      '{',
      'a, b',
      '|',
    ),
    fc.string({ minLength: 1 }),
    fc.string({ minLength: 1, unit: 'grapheme' }),
    fc.integer(),
    fc.boolean(),
  )
  return fc.letrec<{ value: Plain }>((tie) => ({
    value: fc.oneof(
      { weight: 3, arbitrary: scalar },
      { weight: 1, arbitrary: fc.array(tie('value'), { minLength: 1, maxLength: 3 }) },
      {
        weight: 1,
        arbitrary: fc
          .array(fc.tuple(fc.constantFrom('a', 'b-c', 'Na2O', '1', 'x y'), tie('value')), {
            minLength: 1,
            maxLength: 3,
          })
          .map((entries) => Object.fromEntries(entries)),
      },
    ),
  })).value
}

type Path = readonly (string | number)[]

function pathsIn(value: Plain, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return []
  const entries: [string | number, Plain][] = Array.isArray(value)
    ? [...value.entries()]
    : Object.entries(value)
  return entries.flatMap(([key, inner]) => [[...path, key], ...pathsIn(inner, [...path, key])])
}

function at(value: Plain, path: Path): unknown {
  return path.reduce<unknown>((inner, key) => (inner as Record<string | number, unknown>)[key], value)
}

function drop(value: Plain, path: Path): void {
  const holder = at(value, path.slice(0, -1))
  const key = path.at(-1) ?? ''
  if (Array.isArray(holder)) holder.splice(Number(key), 1)
  else delete (holder as Record<string, unknown>)[key]
}
