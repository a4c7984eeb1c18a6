/** Classes that a specification has or has not, in records as a user writes them. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { lotText, SHARED } from '../../front-door/front-door.ts'

const HEAD = 'title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\n'
const set = (classes: string, limits: string) =>
  `${HEAD}classes: ${classes}\nclauses:\n  - { clause: c, property: moisture, at-most: ${limits} }\n`

const SETS = {
  letters: set('[N, F]', '{ N: 3.0 %, F: 3.0 % }'),
  grades: set('[I, II]', '{ I: 3.0 %, II: 4.0 % }'),
  narrow: `${HEAD}extends: { set: letters, classes: [F] }\n`,
  axes: `${HEAD}axes: [[A, B], [S, T]]\nclauses:\n  - { clause: c, property: moisture, at-most: { A: 3.0 % } }\n`,
  buyer: `${HEAD}clauses:\n  - { clause: classes, allowed-classes: [F], accepted-as: [{ class: P, as: F, when: [{ property: moisture, at-most: 1.0 % }] }] }\n`,
  plain: `${HEAD}clauses:\n  - { clause: c, property: moisture, at-most: 3.0 % }\n`,
  faulty: set('[N', '{ N: 3.0 % }'),
  other: set('[X]', '{ X: 3.0 % }').replace('raw-natural-pozzolan', 'slag'),
} as const

interface Written {
  /** Further lines of the source, and of its lot. */
  readonly source: string
  readonly lot?: string
  readonly site?: string
}

function loaded({ source, lot = '', site = '' }: Written) {
  const folder = mkdtempSync(join(tmpdir(), 'class-'))
  const files = [
    ...SHARED,
    ...Object.entries(SETS).map(([id, text]) => [`criteria/${id}.yaml`, text] as const),
    [
      'site.yaml',
      `${SHARED.find(([path]) => path === 'site.yaml')?.[1].replace('alone', 'letters')}${site}\n`,
    ],
    ['sources/tuff.yaml', `name: Trial\nproducer: hill\nkind: raw-natural-pozzolan\n${source}\n`],
    ['lots/tuff/L1.yaml', lotText({ more: lot }, 0)],
  ] as const
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const content = loadRecords(folder)
  rmSync(folder, { recursive: true })
  const told = content.diagnostics.filter(({ code }) => code === 'class-unknown')
  return {
    ...content,
    told: told.map(({ file, line, message, mend }) => `${file}:${line}: ${message}; ${mend}`),
  }
}

describe('a class claimed', () => {
  it.each<[string, Written, string[]]>([
    [
      'that no listed specification has',
      { source: 'class: Fx' },
      [
        'sources/tuff.yaml:4: no specification that judges this has a class "Fx"; letters has N and F; did you mean F?',
      ],
    ],
    [
      'for a lot alone',
      { source: 'class: F', lot: 'class: FF' },
      [
        'lots/tuff/L1.yaml:8: no specification that judges this has a class "FF"; letters has N and F; did you mean F?',
      ],
    ],
    [
      'that a specification for another material has',
      { source: 'class: X\ncriteria: [{ set: letters }, { set: other }]' },
      [
        'sources/tuff.yaml:4: no specification that judges this has a class "X"; letters has N and F; did you mean F or N?',
      ],
    ],
    [
      'by one category of two',
      { source: 'class: A\ncriteria: [{ set: axes }]' },
      [
        'sources/tuff.yaml:4: no specification that judges this has a class "A"; axes has A/S, A/T, B/S and B/T; known: A/S, A/T, B/S, B/T',
      ],
    ],
    [
      'that was listed before the lot was made',
      {
        source: 'class: II\ncriteria: [{ set: grades, to: 2025-01-01 }, { set: letters, from: 2025-01-02 }]',
        lot: 'class: I',
      },
      [
        'lots/tuff/L1.yaml:8: no specification that judges this has a class "I"; letters has N and F; did you mean F or N?',
      ],
    ],
  ])('%s is told', (_title, written, told) => {
    expect(loaded(written).told).toEqual(told)
  })

  it.each<[string, Written]>([
    ['that one of several listed has', { source: 'class: F\ncriteria: [{ set: grades }, { set: letters }]' }],
    ['that the set below has', { source: 'class: N\ncriteria: [{ set: narrow }]' }],
    ['that a clause on classes allows', { source: 'class: P\ncriteria: [{ set: letters }, { set: buyer }]' }],
    [
      'that a project asks for',
      { source: 'class: II', site: 'projects: [{ name: Bridge, criteria: [{ set: grades }] }]' },
    ],
    [
      'that the lot’s own specification has',
      { source: 'class: F', lot: 'class: II\ncriteria: [{ set: grades }]' },
    ],
    ['where each specification is given its own', { source: 'class: Q\nclass-under: { letters: F }' }],
    [
      'where a specification has a fault',
      { source: 'class: Q\ncriteria: [{ set: letters }, { set: faulty }]' },
    ],
    ['where no specification has classes', { source: 'class: Q\ncriteria: [{ set: plain }]' }],
    [
      'under the set that another rests on',
      { source: 'class-under: { letters: N }\ncriteria: [{ set: narrow }]' },
    ],
  ])('%s is let be', (_title, written) => {
    expect(loaded(written).told).toEqual([])
  })

  it('leaves a lot without a verdict under a specification that names its classes otherwise', () => {
    const { records, told } = loaded({ source: 'class: F\ncriteria: [{ set: letters }, { set: grades }]' })
    const { verdicts } = computeEdition(records, { program: 'test' }).lot('tuff/L1')
    expect(told).toEqual([])
    expect(verdicts.map(({ criterion, outcome }) => [criterion, outcome])).toEqual([
      ['letters', 'meets'],
      ['grades', 'not-reported'],
    ])
  })
})

describe('a class claimed under one specification', () => {
  it.each([
    [
      'letters: G',
      [
        'sources/tuff.yaml:4: the specification letters has no class "G"; it has N and F; did you mean F or N?',
      ],
    ],
    ['plain: F', ['sources/tuff.yaml:4: the specification plain has no classes; take the line out']],
    ['buyer: P', []],
    ['grades: II', []],
    ['none: F', []],
  ])('is one of it: %s', (under, told) => {
    expect(loaded({ source: `class-under: { ${under} }\nclass: F` }).told).toEqual(told)
  })
})
