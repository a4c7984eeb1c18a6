/** A new site on the disk, laid out as the command lays it out, and its figures written in as a person does. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { siteFiles, type SiteOptions } from '../../src/commands/lay-out-site.ts'
import { UNASKED } from '../../src/commands/questions.ts'
import { writeNewFolder } from '../../src/commands/write-new-files.ts'
import { readMoment } from '../../src/core/measure/moment.ts'

/** The day on which the site is laid out. */
export const TODAY = readMoment('2026-11-27')

/** Options that leave nothing to be replaced. */
export const NAMED: SiteOptions = {
  producer: 'Hill Ash',
  producerAddress: '1 Lane, Hill',
  signatory: 'A. Mason',
  function: 'manager',
  laboratory: 'Quay laboratory',
}

/** @returns the folder and its first lot */
export async function newSite(options: SiteOptions = {}): Promise<{ folder: string; lot: string }> {
  const folder = join(mkdtempSync(join(tmpdir(), 'new-')), 'works')
  const { site, files } = await siteFiles(folder, options, { asking: UNASKED, today: TODAY })
  await writeNewFolder(folder, files)
  return { folder, lot: `${site.source.id}/${site.lot}` }
}

/** Figures of a lot that meets, by the key that they stand behind. */
const FIGURES: Readonly<Record<string, string>> = {
  SiO2: '54.1 %',
  Al2O3: '23.4 %',
  Fe2O3: '7.2 %',
  CaO: '6.1 %',
  SO3: '0.6 %',
  moisture: '0.1 %',
  'loss-on-ignition': '2.4 %',
  'residue-45um': '17.5 %',
  density: '2.35 g/cm3',
  'autoclave-expansion': '0.03 %',
  'water-requirement': '97 %',
}

/**
 * Writes values behind the colons of a lot's sheet, in the order of its lines.
 * @param indices of the ages in order; an age without one stays blank
 */
export function fillIn(folder: string, lot: string, indices: readonly string[]): void {
  const path = join(folder, 'lots', `${lot}.yaml`)
  const values = [...indices]
  const days = ['2026-11-17', ...indices.map((_, place) => `2026-11-2${place + 4}`)]
  const lines = readFileSync(path, 'utf8')
    .split('\n')
    .map((line) => {
      const [, indent = '', key = ''] = /^( *)([A-Za-z0-9-]+):(?: +#.*)?$/.exec(line) ?? []
      const value = valueBehind(key, indent.length, days, values)
      return value === undefined ? line : line.replace(`${key}:`, `${key}: ${value}`)
    })
  writeFileSync(path, lines.join('\n'))
}

function valueBehind(key: string, indent: number, days: string[], indices: string[]): string | undefined {
  if (indent === 2 && key === 'from') return '2026-11-02'
  if (indent === 2 && key === 'to') return '2026-11-15'
  if (key === 'quantity') return '1450 t'
  if (key === 'tested') return days.shift()
  return key === 'value' ? indices.shift() : FIGURES[key]
}
