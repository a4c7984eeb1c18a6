/** Raw readings of specimens as the audit checks ask for them. */
import type { ReadBatch, StepOf } from '../../core/checks/raw-readings.ts'
import type { MadeTest } from '../../core/checks/retests.ts'
import { defined } from '../../core/measure/defined.ts'
import {
  isFault,
  type Quantity,
  type QuantityKind,
  readQuantity,
  writtenNumber,
} from '../../core/measure/units.ts'
import { isQuantity } from '../../core/mortar/mortar.ts'
import type { Records } from '../../records/load.ts'
import type { LotEntry } from '../shape/edition.ts'
import { producersRecord } from '../shape/producers-results.ts'

/** What was read of a specimen, by the kind of test. */
const READ = { strength: ['load', 'strength'], resistivity: ['resistance', 'resistivity'] } as const

/** Every batch of specimens read on the producer's mortars, in order of the lots. */
export function readBatches(lots: readonly LotEntry[], { conditions }: Records): ReadBatch[] {
  return lots.flatMap(({ id, record }) =>
    (producersRecord(record).tests ?? []).flatMap((test) => {
      const rules = rulesOf(conditions, test.condition)
      const { laboratory, condition } = test
      return (['strength', 'resistivity'] as const).flatMap((of) =>
        (test[of] ?? []).flatMap(({ specimens }): ReadBatch[] =>
          specimens === undefined
            ? []
            : [{ lot: id, laboratory, condition, of, rules, specimens: specimensOf(specimens, of) }],
        ),
      )
    }),
  )
}

/** Every test of a producer's mortar that has readings, in order of the lots. */
export function madeTests(lots: readonly LotEntry[]): MadeTest[] {
  return lots.flatMap(({ id: lot, record }) =>
    (producersRecord(record).tests ?? []).flatMap(({ strength = [], resistivity = [] }) =>
      [...strength, ...resistivity]
        .filter(({ tested }) => tested !== undefined)
        .map((test): MadeTest => ({ lot, retest: test['retest-of'] === undefined ? 'first' : 'retest' })),
    ),
  )
}

/** Per cent as the judging of a batch takes it. */
function rulesOf(conditions: Records['conditions'], id: string): ReadBatch['rules'] {
  const rules = conditions.get(id)?.strength?.['batch-range'] ?? []
  return rules.map(({ of, 'at-most': range, within }) =>
    defined({ of, rangePercent: range?.value, withinPercent: within?.value }),
  )
}

function specimensOf(
  specimens: Readonly<Record<string, object>>,
  of: keyof typeof READ,
): ReadBatch['specimens'] {
  return Object.values(specimens).flatMap((specimen) => {
    const read = isQuantity(specimen) ? specimen : readOf(specimen, of)
    // Of a reading beyond the meter only the ceiling is written.
    if (read === undefined || read.above === true) return []
    const { excluded } = specimen as { readonly excluded?: string }
    const { unit, decimals } = read
    return [defined({ written: Number(writtenNumber(read)), unit, decimals, excluded })]
  })
}

function readOf(specimen: object, of: keyof typeof READ): Quantity | undefined {
  const members = specimen as Readonly<Record<string, Quantity | undefined>>
  // Of several directions the first: each specimen is counted once.
  const { directions = {} } = specimen as { readonly directions?: Readonly<Record<string, Quantity>> }
  if (of === 'resistivity' && Object.values(directions).length !== 0) return Object.values(directions)[0]
  return READ[of].map((key) => members[key]).find((quantity) => quantity !== undefined)
}

const KINDS_READ: Readonly<Record<ReadBatch['of'], readonly QuantityKind[]>> = {
  strength: ['force', 'stress'],
  resistivity: ['resistance', 'resistivity'],
}
const PROPERTIES_READ = { strength: 'compressive-strength', resistivity: 'bulk-resistivity' } as const

/** The step of the one device of a laboratory that reads in a unit; none where several or no device states it. */
export function stepsOfDevices({ laboratories }: Records): StepOf {
  return (laboratory, of, unit) => {
    const steps = (laboratories.get(laboratory)?.equipment ?? [])
      .filter(({ properties }) => properties.includes(PROPERTIES_READ[of]))
      .flatMap(({ resolution }) => (resolution === undefined ? [] : stepIn(resolution, of, unit)))
    return steps.length === 1 ? steps[0] : undefined
  }
}

function stepIn(resolution: string, of: ReadBatch['of'], unit: string): number[] {
  return KINDS_READ[of].flatMap((kind) => {
    const step = readQuantity(resolution, kind)
    return isFault(step) || step.unit !== unit ? [] : [Number(writtenNumber(step))]
  })
}
