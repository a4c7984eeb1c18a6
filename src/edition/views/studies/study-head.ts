/** What every study's page says, whatever its kind: head, plan, departures, materials, conditions, data. */
import { printedUnits, written } from '../../../words/as-written.ts'
import { date } from '../../../words/dates.ts'
import { plural } from '../../../words/numbers.ts'
import { NO_READING_YET } from '../../../words/programme.ts'
import { unbroken } from '../../../words/sentences.ts'
import { conditionName, STUDY_KINDS, STUDY_ROUTES, UNMADE } from '../../../words/studies.ts'
import { paths } from '../../shape/addresses.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { conditionDetails } from './condition-details.ts'

export interface StudyHead {
  readonly title: string
  readonly kind: string
  readonly question: string
  /** Label and value. */
  readonly facts: readonly (readonly [string, string])[]
  readonly plan: readonly (readonly [string, string])[]
  readonly departures: readonly { readonly date: string; readonly text: string }[]
  readonly materials: readonly MaterialLine[]
  readonly hasReadings: boolean
  /** Whether materials have a class. */
  readonly hasClasses: boolean
  readonly conditions: readonly {
    readonly code: string
    readonly words: string
    readonly details: string
    /** Condition of this register that it is; the path of its record, null without one. */
    readonly record: string | null
  }[]
  /** Test batches without an index, and why. */
  readonly unmade: readonly string[]
  readonly note: string
  readonly conclusion: string
}

export interface MaterialLine {
  readonly code: string
  readonly title: string
  readonly class: string
  readonly shownBy: string
  readonly composition: string
}

export function studyHead(study: StudyEntry): StudyHead {
  const { record, indices, readings } = study
  const materials = Object.entries(record.materials)
  return {
    title: unbroken(record.title),
    kind: STUDY_KINDS[record.kind],
    question: unbroken(record.question),
    facts: [
      ['Plan fixed', date(record.plan.fixed)],
      [
        'Readings',
        readings === 0
          ? NO_READING_YET
          : `${readings}, giving ${plural(indices.indices.length, 'index', 'indices')}`,
      ],
      ['Materials', String(materials.length)],
      ['Laboratories', String(Math.max(1, Object.keys(record.laboratories ?? {}).length))],
      ['By', record.by],
    ],
    plan: planLines(record.plan),
    departures: (record.departures ?? []).map((entry) => ({ date: date(entry.date), text: entry.text })),
    materials: materials.map(materialLine),
    hasReadings: 0 < readings,
    hasClasses: materials.some(([, material]) => material.class !== undefined),
    conditions: Object.entries(record.conditions ?? {}).map(([code, condition]) => ({
      code,
      words: conditionName(record.conditions, code),
      record: condition.record === undefined ? null : paths.condition(condition.record),
      details: conditionDetails(condition),
    })),
    unmade: indices.unmade.map(
      ({ test, why }) =>
        `${test.material}, ${conditionName(record.conditions, test.condition)}, ${test.age.text}, batch ${test.batch}, ${STUDY_ROUTES[test.property]}: ${UNMADE[why]}`,
    ),
    note: record.note ?? '',
    conclusion: record.conclusion ?? '',
  }
}

function planLines(plan: StudyEntry['record']['plan']): (readonly [string, string])[] {
  const { hypothesis, classes, exclusions, threshold = {} } = plan
  const steps = Object.entries(threshold).map(
    ([route, step]) => `${written(step)} for the ${STUDY_ROUTES[route as keyof typeof STUDY_ROUTES]}`,
  )
  const lines: (readonly [string, string | undefined])[] = [
    ['Hypothesis', hypothesis],
    ['Classes, and what says so', classes],
    ['Rule for leaving out', exclusions],
    [
      'Threshold',
      steps.length === 0
        ? undefined
        : `The middle of the gap on the logarithmic scale, rounded to ${steps.join(' and ')}; none with two materials or more on the wrong side.`,
    ],
  ]
  return lines.filter((line): line is readonly [string, string] => line[1] !== undefined)
}

function materialLine([code, material]: [string, StudyEntry['record']['materials'][string]]): MaterialLine {
  return {
    code,
    title: material.title,
    class: material.class ?? '',
    shownBy: material['shown-by'] ?? '',
    composition: Object.entries(material.composition ?? {})
      .map(([key, value]) => `${key.replaceAll('-', ' ')} ${printedUnits(value)}`)
      .join(', '),
  }
}
