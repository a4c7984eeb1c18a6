/** The sheet of a new batch of the control mortar. */
import { scalar } from '../records/edit/revision-line.ts'
import type { DescribedCondition } from '../records/records.ts'
import { mixtureLines, resistivityLines, strengthLines, type Units } from './mortar-sheet.ts'
import { type NewFile, remarked, textOf } from './new-file.ts'
import { schemaLine } from './schema-line.ts'

export interface NewControl {
  readonly id: string
  readonly condition: readonly [id: string, condition: DescribedCondition]
  readonly laboratory: string
  readonly units: Units
}

export function controlSheet({
  id,
  condition: [conditionId, condition],
  laboratory,
  units,
}: NewControl): NewFile {
  const path = `controls/${id}.yaml`
  return {
    path,
    text: textOf([
      schemaLine('control', path),
      '# One batch of the control mortar. Several lots may name it; write each value behind its colon, with its unit.',
      `condition: ${conditionId}`,
      `laboratory: ${scalar(laboratory)}`,
      'cement:',
      remarked('  lot:', 'cement lot or delivery'),
      remarked('  type:', 'type of cement'),
      remarked('  Na2O-equivalent:', 'alkalis of the cement, in %'),
      remarked('cast:', 'day and time, such as 2026-03-11T09:00'),
      ...mixtureLines(''),
      ...(condition.strength === undefined ? [] : strengthLines(condition, units, '')),
      ...(condition.resistivity === undefined
        ? []
        : ['# If resistances are read:', ...resistivityLines(condition, '').map((line) => `# ${line}`)]),
    ]),
  }
}
