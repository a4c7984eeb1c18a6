import { execFileSync } from 'node:child_process'
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CODES } from '../../src/records/diagnostics/codes.ts'
import { diagnosticsText } from '../../src/records/diagnostics/diagnostic-text.ts'
import { loadRecords } from '../../src/records/load.ts'
import { issueBase } from './issued/issue-base.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { STUDY } from './studies/study-folder.ts'

const FOLDER = resolve(import.meta.dirname, '../diagnostics')
const CASES = readdirSync(join(FOLDER, 'cases')).filter((name) => /\.(yaml|mdx)$/.test(name))

function baseCopy(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'content-')), 'content')
  cpSync(join(FOLDER, 'base'), folder, { recursive: true })
  return folder
}

/** A case's first line names the file it stands in for; the rest is that file's text. */
function spoiled(name: string): string {
  const folder = baseCopy()
  const [head = '', ...rest] = readFileSync(join(FOLDER, 'cases', name), 'utf8').split('\n')
  const path = join(folder, head.slice(2))
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, rest.join('\n'))
  return folder
}

/** A study whose table has these lines. */
function studyTable(...lines: readonly string[]): (folder: string) => void {
  return (folder) => {
    mkdirSync(join(folder, 'studies'), { recursive: true })
    writeFileSync(join(folder, 'studies/S-1.yaml'), `${STUDY}table: { file: S-1.csv }\n`)
    writeFileSync(join(folder, 'studies/S-1.csv'), `${lines.join('\n')}\n`)
  }
}

/** A study whose material has its heat in a table with these lines. */
function heatTable(...lines: readonly string[]): (folder: string) => void {
  const heat =
    '{ age: 3 d, start: 1 h, share: 10 %, sample: 15 g, baseline: ["0 h, 0 mW"], file: S-1-heat.csv }'
  return (folder) => {
    mkdirSync(join(folder, 'studies'), { recursive: true })
    writeFileSync(
      join(folder, 'studies/S-1.yaml'),
      STUDY.replace(
        'class: reactive, shown-by: heat }',
        `class: reactive, shown-by: heat, reference: { heat: ${heat} } }`,
      ),
    )
    writeFileSync(join(folder, 'studies/S-1-heat.csv'), `${lines.join('\n')}\n`)
  }
}

/** Faults of files rather than of text, made on the spot. */
const FILE_CASES: Readonly<Record<string, (folder: string) => void>> = {
  'file-missing': (folder) => {
    renameSync(join(folder, 'site.yaml'), join(folder, '.site.yaml'))
  },
  // What a later version writes is not told as faults, of the site and of other records.
  'format-newer': (folder) => {
    appendFileSync(join(folder, 'site.yaml'), 'format: 2\nclocks: [quay]\n')
    writeFileSync(join(folder, 'lots/tuff/T-1.yaml'), 'hours: 12\n')
  },
  'file-unexpected': (folder) => {
    writeFileSync(join(folder, 'lots/tuff/T-2.yml'), 'a: 1\n')
  },
  'file-unexpected.note': (folder) => {
    writeFileSync(join(folder, 'lots/tuff/notes.txt'), 'ask the laboratory\n')
  },
  'file-unexpected.link': (folder) => {
    writeFileSync(join(folder, '../outside.yaml'), 'nobody else’s business\n')
    symlinkSync('../../../outside.yaml', join(folder, 'lots/tuff/T-2.yaml'))
  },
  'file-unexpected.folder-link': (folder) => {
    symlinkSync('..', join(folder, 'lots/tuff/round'))
  },
  'file-unreadable.pipe': (folder) => {
    execFileSync('mkfifo', [join(folder, 'lots/tuff/T-2.yaml')])
  },
  'file-unreadable.encoding': (folder) => {
    writeFileSync(join(folder, 'lots/tuff/T-2.yaml'), Buffer.from([0x61, 0x3a, 0x20, 0xff, 0x0a]))
  },
  'file-unreadable.utf-16': (folder) => {
    const path = join(folder, 'producers/hill.yaml')
    writeFileSync(path, Buffer.from(readFileSync(path, 'utf8'), 'utf16le'))
  },
  'text-character.null': (folder) => {
    edit(join(folder, 'producers/hill.yaml'), '1 Mill', '1\0 Mill')
  },
  'file-unexpected.no-folder': (folder) => {
    rmSync(join(folder, 'lots'), { recursive: true })
    writeFileSync(join(folder, 'lots'), 'gone\n')
  },
  'file-unreadable.size': (folder) => {
    writeFileSync(join(folder, 'lots/tuff/T-2.yaml'), 'a'.repeat(5_000_000))
  },
  'id-invalid': (folder) => {
    cpSync(join(folder, 'lots/tuff/T-1.yaml'), join(folder, 'lots/tuff/T 2.yaml'))
  },
  'id-invalid.device': (folder) => {
    cpSync(join(folder, 'lots/tuff/T-1.yaml'), join(folder, 'lots/tuff/nul.yaml'))
  },
  'id-case': (folder) => {
    cpSync(join(folder, 'producers/hill.yaml'), join(folder, 'producers/Hill.yaml'))
  },
  'reference-unknown.source-folder': (folder) => {
    mkdirSync(join(folder, 'lots/tuf'))
    cpSync(join(folder, 'lots/tuff/T-1.yaml'), join(folder, 'lots/tuf/T-1.yaml'))
  },
  'quantity.study-cell': studyTable('material,age,strength (MPa)', 'A1,28 d,n/a'),
  'quantity-comma.study-cell': studyTable('material,age,strength (MPa)', 'A1,28 d,"40,1"'),
  'quantity-unit.study-heading': studyTable('material,age,strength', 'A1,28 d,40'),
  'key-missing.study-age': studyTable('material,age,strength (MPa)', 'A1,,40'),
  'key-unknown.study-column': studyTable('materail,age,strength (MPa)', 'A1,28 d,40'),
  'duplicate-id.study-specimen': studyTable(
    'material,age,specimen,strength (MPa)',
    'A1,28 d,1,40',
    'A1,28 d,1,41',
  ),
  'reading-at-ceiling': (folder) => {
    const warm = readFileSync(join(folder, 'conditions/warm.yaml'), 'utf8')
    const read =
      'resistivity: { specimen: { shape: cube, side: 50 mm }, reading: { temperature: 23 degC, within: 2 degC }, meter: { ceiling: 850 ohm } }'
    writeFileSync(join(folder, 'conditions/metered.yaml'), `${warm}${read}\n`)
    const control = 'condition: metered\nlaboratory: quay\ncement: { lot: PC-1 }\ncast: 2026-03-11T09:00\n'
    const specimens = '{ a: 900 ohm, b: "> 850 ohm", c: 849 ohm, d: "> 500 ohm" }'
    const reading = `{ age: 7 d, tested: 2026-03-18T09:55, temperature: 23 degC, specimens: ${specimens} }`
    writeFileSync(join(folder, 'controls/K2.yaml'), `${control}resistivity:\n  - ${reading}\n`)
  },
  'conflict-marker.study-table': studyTable(
    'material,age,strength (MPa)',
    '<<<<<<< HEAD',
    'A1,28 d,40',
    '=======',
    'A1,28 d,41',
    '>>>>>>> bench',
  ),
  'schema.study-row': studyTable('material,age,strength (MPa)', 'A1,28 d'),
  'schema.study-quote': studyTable('note,material,age,strength (MPa)', '"two', 'lines",A1,28 d,40'),
  'schema.study-semicolons': studyTable('material;age;strength (MPa)', 'A1;28 d;40'),
  'schema.study-batch': studyTable('material,batch,age,strength (MPa)', 'A1,=1+1,28 d,40'),
  'reading-order.study-table': heatTable('material,time (h),power (mW)', 'A1,0,5', 'A1,90,3', 'A1,80,2'),
  'reference-mismatch.study-table': heatTable('material,time (h),power (mW)', 'Q1,0,5', 'Q1,90,3'),
  'reference-unknown.study-heat': heatTable('material,time (h),power (mW)', 'A1,0,5', 'A7,1,4', 'A1,90,3'),
  'quantity-range.study-power': heatTable('time (h),power (mW)', '0,5', '90,900000'),
  'quantity.study-power': heatTable('time (h),power (mW)', '0,5', '90,n/a'),
  'key-unknown.study-heading': heatTable('time (h);power (mW)', '0;5', '90;3'),
  'file-unreadable.latin-1': (folder) => {
    const path = join(folder, 'producers/hill.yaml')
    writeFileSync(path, Buffer.from(`${readFileSync(path, 'latin1').trimEnd()}\n# M\u00fcller\n`, 'latin1'))
  },
  'file-unexpected.folder': (folder) => {
    rmSync(join(folder, 'lots/tuff/T-9.yaml'))
    mkdirSync(join(folder, 'lots/tuff/T-9.yaml'))
  },
  'issued-missing': (folder) => {
    issueBase(folder)
    rmSync(join(folder, 'issued/tuff/T-1/1.json'))
  },
  'issued-missing.copied': (folder) => {
    issueBase(folder)
    cpSync(join(folder, 'lots/tuff/T-9.yaml'), join(folder, 'lots/tuff/T-3.yaml'))
  },
  'issued-altered': (folder) => {
    issueBase(folder)
    edit(join(folder, 'issued/tuff/T-1/0.json'), '"first"', '"other"')
  },
  'issued-mismatch': (folder) => {
    issueBase(folder)
    edit(join(folder, 'lots/tuff/T-1.yaml'), 'reason: first', 'reason: second')
  },
  'issued-part': (folder) => {
    issueBase(folder)
    for (const path of partsWith(folder, '"salt":"tuff/T-1first"')) edit(path, 'A. Mason', 'B. Baker')
  },
  'issued-part-unused': (folder) => {
    issueBase(folder)
    writeFileSync(join(folder, `issued/parts/sha256-${'0'.repeat(64)}.json`), '{}')
  },
  'issued-unrecorded': (folder) => {
    issueBase(folder)
    rmSync(join(folder, 'lots/tuff/T-9.yaml'))
    cpSync(join(folder, 'issued/tuff/T-1/1.json'), join(folder, 'issued/tuff/T-1/2.json'))
  },
  'issued-stray': (folder) => {
    issueBase(folder)
    writeFileSync(join(folder, 'issued/tuff/notes.txt'), 'x')
  },
}

function edit(path: string, from: string, to: string): void {
  const text = readFileSync(path, 'utf8')
  expect(text).toContain(from)
  writeFileSync(path, text.replace(from, to))
}

function partsWith(folder: string, text: string): string[] {
  return readdirSync(join(folder, 'issued/parts'))
    .map((name) => join(folder, 'issued/parts', name))
    .filter((path) => readFileSync(path, 'utf8').includes(text))
}

function textFor(folder: string): string {
  const { diagnostics } = loadRecords(folder)
  // A digest tells of every word that a document prints; the cases are about the fault.
  return `${diagnosticsText(diagnostics, folder).replaceAll(/sha256-[0-9a-f]{8,64}/g, 'sha256-…')}\n`
}

describe('the good records that the cases spoil', () => {
  it('give no diagnostic', () => {
    expect(loadRecords(baseCopy()).diagnostics).toEqual([])
  })
})

describe('a spoiled record', () => {
  it.each(CASES)('%s is reported with place, line, caret and fix', async (name) => {
    const text = textFor(spoiled(name))
    await expect(text).toMatchFileSnapshot(join(FOLDER, 'cases', `${name.replace(/\.\w+$/, '')}.txt`))
    expect(text).toContain(`[${name.split('.')[0]}]`)
    expect(text).toMatch(/^fix: ./m)
  })
  it.each(Object.keys(FILE_CASES))('%s is reported with file and fix', async (name) => {
    const folder = baseCopy()
    FILE_CASES[name]?.(folder)
    const text = textFor(folder)
    await expect(text).toMatchFileSnapshot(join(FOLDER, 'cases', `${name}.txt`))
    expect(text).toContain(`[${name.split('.')[0]}]`)
  })
  it('exists for every code', () => {
    const covered = new Set([...CASES, ...Object.keys(FILE_CASES)].map((name) => name.split('.')[0]))
    expect(Object.keys(CODES).filter((code) => !covered.has(code))).toEqual([])
  })
  it('is told on one line where a sign of its file’s name would begin another, or steer a terminal', () => {
    const folder = baseCopy()
    cpSync(join(folder, 'lots/tuff/T-1.yaml'), join(folder, 'lots/tuff/T\n\u001b[2J.yaml'))
    expect(textFor(folder)).toMatch(/^lots\/tuff\/T\\n\\u001b\[2J\.yaml:1:1: .* \[id-invalid\]$/m)
  })
  it('pollutes no prototype', () => {
    loadRecords(spoiled('yaml-forbidden-key.yaml'))
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })
  it.each(CASES)('%s leaves the other records fit to be computed', (name) => {
    expect(() => computeEdition(loadRecords(spoiled(name)).records, { program: 'test' })).not.toThrow()
  })
  it('loses no reading without a word', () => {
    const { diagnostics } = loadRecords(spoiled('yaml-forbidden-key.specimen.yaml'))
    expect(diagnostics.map((diagnostic) => diagnostic.code)).toEqual(['yaml-forbidden-key'])
  })
  it('stays out of the records, alone', () => {
    const { records } = loadRecords(spoiled('quantity-comma.yaml'))
    expect([...records.lots.keys()]).toEqual(['tuff/T-9'])
  })
})

describe('several faults', () => {
  it('are all told in one run, in order of file, line and column', () => {
    const folder = baseCopy()
    const path = join(folder, 'lots/tuff/T-1.yaml')
    writeFileSync(
      path,
      readFileSync(path, 'utf8')
        .replace('1450 t', '1450')
        .replace('kind: composite', 'kind: heap')
        .replace('control: K1', 'control: K7')
        .replace('24.8 t', '24.8 ton'),
    )
    const { diagnostics } = loadRecords(folder)
    expect(diagnostics.map((diagnostic) => diagnostic.code)).toEqual([
      'quantity-unit',
      'schema',
      'quantity-unit',
    ])
    expect(diagnostics.map((diagnostic) => diagnostic.line)).toEqual([2, 4, 16])
  })
  it('give line and column from 1, counted in the file itself, byte order mark and CRLF included', () => {
    const folder = baseCopy()
    const path = join(folder, 'lots/tuff/T-1.yaml')
    writeFileSync(
      path,
      `\ufeff${readFileSync(path, 'utf8').replace('1450 t', '1450 kN').replaceAll('\n', '\r\n')}`,
    )
    expect(loadRecords(folder).diagnostics.map(({ line, column, code }) => ({ line, column, code }))).toEqual(
      [{ line: 2, column: 11, code: 'quantity-unit' }],
    )
  })
})

describe('loadRecords', () => {
  it.each([
    ['quantity: 1450 t', 'quantity: " 1450 t"'],
    ['quantity: 1450 t', 'quantity: 1450 metric  ton'],
    ['residue-45um: 8.4 %', 'residue-45um: < 8.4 per  cent'],
  ])('never leaves a lot out without a word: %s as %s', (plain, odd) => {
    const folder = baseCopy()
    const path = join(folder, 'lots/tuff/T-1.yaml')
    writeFileSync(path, readFileSync(path, 'utf8').replace(plain, odd))
    const { records, diagnostics } = loadRecords(folder)
    expect(diagnostics).toEqual([])
    expect(records.lots.has('tuff/T-1')).toBe(true)
  })
  it('says in one line that a folder is missing or empty', () => {
    const folder = mkdtempSync(join(tmpdir(), 'empty-'))
    expect(loadRecords(join(folder, 'none')).fatal?.message).toMatch(/does not exist/)
    expect(loadRecords(folder).fatal?.message).toMatch(/is empty/)
    expect(loadRecords(join(dirname(FOLDER), 'records/diagnostics.test.ts')).fatal?.message).toMatch(
      /is not a folder/,
    )
  })
})
