/** The records of a new site: one small one of each kind, with what only its owner knows left to be replaced. */
import type { Criterion } from '../core/criteria/criterion.ts'
import type { MaterialKind } from '../core/measure/material-kind.ts'
import { scalar } from '../records/edit/revision-line.ts'
import type { DescribedCondition } from '../records/records.ts'
import { askedFigures } from './asked-figures.ts'
import { controlSheet } from './control-sheet.ts'
import { type Figures, lotSheet } from './lot-sheet.ts'
import { type NewFile, textOf } from './new-file.ts'
import {
  laboratoryRecord,
  type NewLaboratory,
  type NewProducer,
  producerRecord,
  sourceRecord,
} from './party-records.ts'
import { schemaLine } from './schema-line.ts'

export interface NewSite {
  readonly title: string
  readonly address?: string
  readonly units: 'SI' | 'US'
  /** Whether the names of persons are published. */
  readonly persons: boolean
  readonly producer: NewProducer
  readonly laboratory: Omit<NewLaboratory, 'asked'>
  readonly source: { readonly id: string; readonly name: string }
  readonly material: MaterialKind
  /** Class claimed; null where the set has none. */
  readonly class: string | null
  readonly governing: Criterion
  readonly conditions: ReadonlyMap<string, DescribedCondition>
  readonly figures: Figures
  readonly lotNumberPattern: string
  /** Number of the first lot. */
  readonly lot: string
}

export function newSiteRecords(site: NewSite): NewFile[] {
  const { source, producer, material, governing, laboratory } = site
  const of = { kind: material, class: site.class }
  const asked = askedFigures(governing, of)
  const conditionOf = asked.find(({ condition }) => condition !== undefined)?.condition
  const condition = site.conditions.get(conditionOf ?? '')
  const hasControl = site.figures === 'readings' && conditionOf !== undefined && condition !== undefined
  const control = `${conditionOf}-001`
  return [
    { path: 'site.yaml', text: siteText(site) },
    producerRecord(producer),
    laboratoryRecord({ ...laboratory, asked }),
    sourceRecord({
      ...{ ...source, producer: producer.id, kind: material, class: site.class },
      ...{ lotNumberPattern: site.lotNumberPattern, governing, isOwnSet: false, units: site.units },
    }),
    ...(hasControl
      ? [
          controlSheet({
            id: control,
            condition: [conditionOf, condition],
            laboratory: laboratory.id,
            units: site.units,
          }),
        ]
      : []),
    lotSheet({
      ...{ lot: `${source.id}/${site.lot}`, sourceName: source.name, laboratory: laboratory.id },
      ...{ units: site.units, figures: site.figures, asked, regular: [], conditions: site.conditions },
      controls: new Map(hasControl ? [[conditionOf, control]] : []),
    }),
  ]
}

function siteText({ title, address, units, persons, governing }: NewSite): string {
  return textOf([
    schemaLine('site', 'site.yaml'),
    `title: ${scalar(title)}`,
    ...(address === undefined
      ? [
          '# Where the site will live, ending in "/". Without it there are no QR codes, no feed and no site map.',
          '# address: https://example.org/certificates/',
        ]
      : [`address: ${address}`]),
    `units: ${units}`,
    '# The first one governs; a source may have its own. Each lies in criteria/.',
    `criteria: [${governing.id}]`,
    '# How long a planned result is still awaited after its due date.',
    'grace: 7 d',
    '# What of the records may reach the site besides results and verdicts: nothing, until it is named here. Without persons',
    '# a certificate says “name not published” where it is signed.',
    '# Of consignee, project, seals, verification, persons, findings:',
    persons ? 'publish: [persons]' : '# publish: [persons]',
    '# Lots that were never issued are on no public page, unless you say yes.',
    'drafts: no',
  ])
}
