/** The list of laboratories. */
import { sentence } from '../../words/sentences.ts'
import type { Edition } from '../shape/edition.ts'

export interface LaboratoryLine {
  readonly id: string
  readonly name: string
  readonly standing: string
  readonly accreditation: string
  readonly batches: number
}

export function laboratoryLines({ laboratories, controls }: Edition): LaboratoryLine[] {
  const batches = Map.groupBy(controls.values(), ({ record }) => record.laboratory)
  return [...laboratories].map(([id, { name, standing, accreditation }]) => ({
    id,
    name,
    standing: sentence(standing),
    accreditation:
      accreditation?.map(({ number, body }) => `${number}, ${body}`).join('; ') ?? 'none on record',
    batches: batches.get(id)?.length ?? 0,
  }))
}
