/** new lot, control, source, laboratory, producer, criterion, study in a new site. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { layOutLot, type LotOptions } from '../../src/commands/lay-out-lot.ts'
import {
  layOutControl,
  layOutCriterion,
  layOutLaboratory,
  layOutProducer,
  layOutSource,
  layOutStudy,
} from '../../src/commands/lay-out-records.ts'
import { shippedRecords } from '../../src/commands/shipped.ts'
import { writeNewFiles } from '../../src/commands/write-new-files.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { loadRecords } from '../../src/records/load.ts'
import type { NewFile } from '../../src/scaffold/new-file.ts'
import { STUDY_KINDS } from '../../src/scaffold/study-sheet.ts'
import { fillIn, NAMED, newSite, TODAY } from './new-site-folder.ts'

const SOURCE = 'coal-fly-ash'
const PRODUCED = { from: readMoment('2026-11-02'), to: readMoment('2026-11-08'), quantity: '1200 t' }
let folder = ''
let first = ''

beforeEach(async () => {
  const site = await newSite(NAMED)
  folder = site.folder
  first = site.lot
})

const records = () => loadRecords(folder, TODAY).records

function errors(): string[] {
  return loadRecords(folder, TODAY).diagnostics.flatMap(({ severity, file, line, message }) =>
    severity === 'error' ? [`${file}:${line}: ${message}`] : [],
  )
}

function write(files: readonly NewFile[]): void {
  writeNewFiles(folder, files)
}

function edit(path: string, from: string | RegExp, to: string): void {
  const file = join(folder, path)
  const text = readFileSync(file, 'utf8')
  expect(text).toMatch(from)
  writeFileSync(file, text.replace(from, to))
}

function newLot(options: LotOptions = {}, name?: string) {
  const laidOut = layOutLot(records(), [SOURCE, name], options, TODAY)
  write([laidOut.file])
  return laidOut
}

describe('layOutLot', () => {
  it('says that what names or is the specification has a fault, not that there is none', () => {
    const lay = () => layOutLot(records(), [SOURCE, undefined], {}, TODAY)
    const [set = ''] = records().site.criteria
    const path = join(folder, `criteria/${set.split('/')[0]}.yaml`)
    const text = readFileSync(path, 'utf8')
    writeFileSync(path, ']')
    expect(lay).toThrow(
      `Which criteria hold for ${SOURCE} is not known: ${set} cannot be read or has a fault.`,
    )
    writeFileSync(path, text)
    writeFileSync(join(folder, 'site.yaml'), ']')
    expect(lay).toThrow(/is not known: site\.yaml cannot be read or has a fault\.\nfix: .* shows the fault/)
  })
  it('takes the next number each time, whether anything was written into the lot before or not', () => {
    expect(newLot().lot).toBe(`${SOURCE}/CFA-2026-002`)
    expect(newLot().lot).toBe(`${SOURCE}/CFA-2026-003`)
    const later = { from: readMoment('2026-12-28'), to: readMoment('2027-01-04'), quantity: '1200 t' }
    expect(layOutLot(records(), [SOURCE, undefined], later, TODAY).lot).toBe(`${SOURCE}/CFA-2027-001`)
    expect(errors()).toEqual([])
  })
  it('skips a number that was given up', () => {
    edit(
      `sources/${SOURCE}.yaml`,
      /$/,
      'numbers-not-used: [{ number: CFA-2026-002, reason: "label torn" }]\n',
    )
    expect(newLot().lot).toBe(`${SOURCE}/CFA-2026-003`)
  })
  it('is on record as soon as its production is known, with its results still to come', () => {
    const produced = { from: readMoment('2026-11-16'), to: readMoment('2026-11-22') }
    const { lot, asked } = newLot({ ...produced, quantity: '1200 t' })
    expect(errors()).toEqual([])
    expect(records().lots.get(lot)).toMatchObject({ quantity: { value: 1200 }, produced })
    expect(asked.map(({ property }) => property)).toContain('loss-on-ignition')
    const edition = computeEdition(records(), { program: 'test', asOf: TODAY })
    expect(edition.lot(lot).verdicts[0]?.outcome).toBe('not-reported')
  })
  it('lays out the regular samples of the plan, as many as mass and time ask for', () => {
    edit(
      `sources/${SOURCE}.yaml`,
      /$/,
      'sampling-plan: [{ properties: [moisture, residue-45um], every: 400 t, or-every: 2 d, kind: grab }]\n',
    )
    const { file } = newLot({
      from: readMoment('2026-11-16'),
      to: readMoment('2026-11-20'),
      quantity: '1500 t',
    })
    expect(file.text.match(/- id: R\d/g)).toEqual(['- id: R1', '- id: R2', '- id: R3', '- id: R4'])
    expect(file.text.match(/moisture:/g)).toHaveLength(4)
    expect(file.text.match(/density:/g)).toHaveLength(1)
    expect(errors()).toEqual([])
  })
  it('asks for readings where the lot before has them, and names the newest control', () => {
    write(layOutControl(records(), 'quay-laboratory', {}))
    edit('controls/c311-001.yaml', /lot: +#/, 'lot: PC-1 #')
    edit('controls/c311-001.yaml', /cast: +#/, 'cast: 2026-11-11T09:00 #')
    const { file } = newLot({ figures: 'readings' })
    expect(file.text).toMatch(/^ {4}control: c311-001 /m)
    expect(file.text).toMatch(/^ {8}specimens: \{ a: , b: , c: \} /m)
    expect(file.text).toMatch(/^ {8}specimens: \{ d: , e: , f: \} /m)
    expect(file.text).not.toContain('strength-activity-index')
    expect(errors()).toEqual([])
  })
  it('is computed from readings once they are written', async () => {
    const site = await newSite({ ...NAMED, governing: 'modified-strength', figures: 'readings' })
    folder = site.folder
    const control = 'controls/modified-50c-001.yaml'
    edit(control, /lot: +#/, 'lot: PC-1 #')
    edit(control, /^cast: +#/m, 'cast: 2026-10-14T09:00 #')
    edit(
      control,
      /(age: 28 d\n +tested:) +#(.*\n.*)\{ [a-z]: , [a-z]: , [a-z]: \}/,
      '$1 2026-11-11T09:10 #$2{ a: 90 kN, b: 91 kN, c: 92 kN }',
    )
    const lot = `lots/${site.lot}.yaml`
    edit(lot, /from: +#/, 'from: 2026-10-05 #')
    edit(lot, /to: +#/, 'to: 2026-10-11 #')
    edit(lot, /quantity: +#/, 'quantity: 900 t #')
    edit(lot, /cast: +#/, 'cast: 2026-10-14T09:30 #')
    edit(
      lot,
      /(age: 28 d\n +tested:) +#(.*\n.*)\{ [a-z]: , [a-z]: , [a-z]: \}/,
      '$1 2026-11-11T09:40 #$2{ a: 80 kN, b: 81 kN, c: 82 kN }',
    )
    expect(errors()).toEqual([])
    const [verdict] = computeEdition(records(), { program: 'test', asOf: TODAY }).lot(site.lot).verdicts
    // Loads of 80, 81, 82 over 90, 91, 92 kN: 100 × 81 / 91 = 89.0 %, at least 70 %.
    expect(verdict?.outcome).toBe('meets')
  })
  it.each([
    ['coal-fly-ahs', undefined, {}, /^There is no source "coal-fly-ahs".*\nfix: did you mean coal-fly-ash/],
    [SOURCE, 'A B', {}, /^"A B" is not a valid id/],
    [SOURCE, '2026', {}, /^"2026" is not a valid id of a lot/],
    [
      SOURCE,
      undefined,
      { laboratory: 'quai-laboratory' },
      /^There is no laboratory.*\nfix: did you mean quay-laboratory/,
    ],
    [SOURCE, undefined, { ...PRODUCED, quantity: '12' }, /^"12" is not a mass/],
    [SOURCE, undefined, { ...PRODUCED, from: TODAY }, /^Production ends before it begins/],
    [SOURCE, undefined, { quantity: '12 t' }, /^--from, --to and --quantity go together/],
  ])('refuses %s %s %o', (source, name, options, message) => {
    expect(() => layOutLot(records(), [source, name], options, TODAY)).toThrow(message)
  })
  it('asks for a number where the source’s pattern counts nothing', () => {
    edit(`sources/${SOURCE}.yaml`, /lot-number-pattern: .*/, 'lot-number-pattern: LOT')
    expect(() => newLot()).toThrow(/states no pattern.*\nfix: name the lot: new lot coal-fly-ash LOT/)
    expect(newLot({}, 'special-1').lot).toBe(`${SOURCE}/special-1`)
  })
})

describe('new records', () => {
  it('are read without an error, those of a source with a set that comes along', () => {
    write(layOutProducer('dale', { name: 'Dale Ash' }))
    write(layOutLaboratory(records(), undefined, { name: 'North laboratory', standing: 'independent' }))
    write(
      layOutSource(records(), 'dale-ash', {
        name: 'Dale ash',
        producer: 'dale',
        governing: 'en450-1-2012',
        class: 'A/N',
      }),
    )
    write(layOutControl(records(), 'north-laboratory', { condition: 'modified-50c' }))
    write(layOutControl(records(), 'north-laboratory', { condition: 'modified-50c' }))
    expect(errors()).toEqual([])
    const all = records()
    expect([...all.laboratories.keys()]).toContain('north-laboratory')
    expect(all.sources.get('dale-ash')).toMatchObject({
      producer: 'dale',
      class: 'A/N',
      criteria: [{ set: 'en450-1-2012' }],
    })
    expect([...all.criteria.keys()]).toEqual(['c618-23e1', 'en450-1-2012'])
    expect([...all.conditions.keys()]).toEqual(['c311', 'en450-25', 'modified-50c'])
  })
  it('a source claims what the others of its kind do', () => {
    write(layOutSource(records(), 'dale-ash', { name: 'Dale ash' }))
    expect(records().sources.get('dale-ash')).toMatchObject({ class: 'F' })
  })
  it.each(STUDY_KINDS)('a %s study is read without an error, as a plan', (kind) => {
    write(layOutStudy(kind, 'S-9', TODAY))
    expect(errors()).toEqual([])
    expect(records().studies.get('S-9')).toMatchObject({ record: { kind }, readings: [] })
    expect(() => computeEdition(records(), { program: 'test', asOf: TODAY }).study('S-9')).not.toThrow()
  })
  it.each([
    [() => layOutControl(records(), 'quay', {}), /^There is no laboratory "quay"/],
    [
      () => layOutControl(records(), 'quay-laboratory', { condition: 'c312' }),
      /^There is no condition "c312".*\nfix: did you mean c311/,
    ],
    [() => layOutControl(records(), 'quay-laboratory', { id: 'a b' }), /^"a b" is not a valid id/],
    [
      () => layOutSource(records(), 'x', { producer: 'hil-ash' }),
      /^There is no producer "hil-ash".*\nfix: did you mean hill-ash/,
    ],
    [
      () => layOutSource(records(), 'x', { material: 'slak' }),
      /^There is no kind of material "slak".\nfix: did you mean slag/,
    ],
    [() => layOutSource(records(), 'x', { class: 'G' }), /^The specification c618-23e1 has no class "G"/],
    [
      () => layOutSource(records(), 'x', { material: 'raw-natural-pozzolan' }),
      /^Limits of c618-23e1 depend on the class, and none is given.\nfix: add --class with one of N, F or C/,
    ],
    [
      () => layOutCriterion(records(), 'roads', 'c618-23'),
      /^There is no criterion "c618-23".*\nfix: did you mean .*c618-23e1/,
    ],
    [
      () => layOutCriterion(records(), 'what-if', 'c618-19'),
      /^"What-if"|^"what-if" is not a valid id of a criterion/,
    ],
    [
      () => layOutStudy('screning', undefined, TODAY),
      /^There is no kind of study "screning".\nfix: did you mean screening/,
    ],
  ])('are refused where a name is at fault: %#', (layOut, message) => {
    expect(layOut).toThrow(message)
  })
  it('are written with the first lot untouched', () => {
    const before = readFileSync(join(folder, 'lots', `${first}.yaml`), 'utf8')
    fillIn(folder, first, ['84 %', '92 %'])
    newLot()
    expect(readFileSync(join(folder, 'lots', `${first}.yaml`), 'utf8')).not.toBe(before)
    expect(errors()).toEqual([])
  })
})

describe('layOutCriterion', () => {
  const SHIPPED = [...shippedRecords().criteria.values()]

  it.each(SHIPPED.map(({ id }) => id))('rests on %s and names every clause of it', (id) => {
    const files = layOutCriterion(records(), 'roads', id)
    write(files)
    expect(errors()).toEqual([])
    const [base, own] = [records().criteria.get(id), records().criteria.get('roads')]
    expect(own?.clauses.map((clause) => clause.id)).toEqual([
      ...(base?.clauses.map((clause) => clause.id) ?? []),
      'reported',
    ])
    const text = files.at(-1)?.text ?? ''
    for (const clause of base?.clauses ?? []) expect(text).toContain(`\n# ${clause.id}: `)
  })
  it('shows changes that can be made as they are shown', () => {
    for (const { id } of SHIPPED) {
      const files = layOutCriterion(records(), 'roads', id)
      const text = files.at(-1)?.text ?? ''
      const examples = [...text.matchAll(/^ {2}# (- .*(?:\n {2}# {3}.*)*)/gm)].map(
        ([, example = '']) => example,
      )
      expect(examples.length).toBeGreaterThan(2)
      write(files.slice(0, -1))
      for (const example of examples) {
        const lines = example.replaceAll('\n  # ', '\n  ')
        const path = join(folder, 'criteria/roads.yaml')
        writeFileSync(path, text.replace(/^ {2}- \{ change: add, clause: reported.*$/m, `  ${lines}`))
        expect([id, example, errors()]).toEqual([id, example, []])
      }
    }
  })
  it('takes over one class where it is named', () => {
    write(layOutCriterion(records(), 'roads', 'c618-23e1/F'))
    expect(records().criteria.get('roads')?.classes).toEqual(['F'])
  })
})
