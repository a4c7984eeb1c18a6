/** A programme of three materials under two conditions, for tests that change one thing about it. */
import { readAge } from '../../../../src/core/measure/age.ts'
import { readMoment } from '../../../../src/core/measure/moment.ts'
import type {
  PlannedAge,
  PlannedCondition,
  Programme,
} from '../../../../src/core/studies/programme/programme.ts'

export const dayOf = (date: string) => readMoment(date).day

export function plannedAge(age: string, withinHours: number, strength = 3, resistivity = 0): PlannedAge {
  return { age: readAge(age), withinHours, strength, resistivity }
}

export function plannedCondition(code: string, more: Partial<PlannedCondition> = {}): PlannedCondition {
  return {
    ...{ code, cement: 'C1', replacementPercent: 30, waterRatio: 0.485, controlWaterG: null },
    ...{ flow: 'constant-w/cm', cementitiousG: 500, sandG: 1375, ages: [plannedAge('28 d', 12)] },
    ...more,
  }
}

export function tinyProgramme(more: Partial<Programme> = {}): Programme {
  return {
    materials: ['Q', 'L', 'A'],
    conditions: [plannedCondition('R30'), plannedCondition('R50', { replacementPercent: 50 })],
    ...{ laboratories: ['1'], batches: 2, leftOut: [], control: 'shared' },
    days: {
      by: 'capacity',
      first: dayOf('2026-04-07'),
      on: new Set([1, 2]),
      except: new Set(),
      mortarsADay: 5,
    },
    ...{ castMinute: null, resistivityOn: 'crushed', spare: 0, inMouldHours: 24 },
    ...more,
  }
}
