/** The factors that a screening study states of its conditions. */
import { compareAges } from '../../core/measure/age.ts'
import type { ScreenedRoute } from '../../core/studies/screening/screening.ts'
import { type FactorLayout, factorLayout, type StatedFactor } from '../../core/studies/screening/factors.ts'
import { written } from '../../words/as-written.ts'
import type { Study } from '../schema/loaded-records.ts'

type StudyCondition = NonNullable<Study['conditions']>[string]

/** A factor by its name, with a number to order its levels by where it has one. */
interface Stated {
  readonly name: string
  readonly of: (condition: StudyCondition) => string | undefined
  readonly order?: (condition: StudyCondition) => number | undefined
}

const FACTORS: readonly Stated[] = [
  {
    name: 'replacement',
    of: ({ replacement: r }) => r && written(r),
    order: ({ replacement }) => replacement?.value,
  },
  {
    name: 'temperature',
    of: ({ temperature: t }) => t && written(t),
    order: ({ temperature }) => temperature?.value,
  },
  {
    name: 'w/cm',
    of: (one) => (one['w/cm'] === undefined ? undefined : `w/cm ${one['w/cm']}`),
    order: (one) => one['w/cm'],
  },
  { name: 'flow', of: ({ flow }) => flow?.replace('constant-', 'constant ') },
  { name: 'curing', of: ({ curing }) => curing?.replaceAll('-', ' ') },
  { name: 'cement', of: ({ cement }) => cement && `cement ${cement}` },
]

/** What a condition does not state is a level of its own. */
const NOT_STATED = 'not stated'

/** @param route of the study; its conditions and ages by the factors that vary */
export function studyFactors({ conditions }: Study, route: ScreenedRoute): FactorLayout {
  const screens = route.conditions.map((screen) => ({
    screen,
    condition: conditions?.[screen.condition] ?? {},
  }))
  const stated = FACTORS.map(({ name, of, order }): StatedFactor & { readonly own: string[] } => {
    const all = screens.map(({ condition }) => ({
      text: of(condition) ?? NOT_STATED,
      place: order?.(condition) ?? Number.NEGATIVE_INFINITY,
    }))
    const levels = all
      .toSorted((a, b) => (a.place === b.place ? 0 : a.place - b.place))
      .map(({ text }) => text)
    return { name, levels: [...new Set(levels)], own: all.map(({ text }) => text) }
  })
  const ages = [...screens.map(({ screen }) => screen.age)].toSorted(compareAges).map(({ text }) => text)
  return factorLayout(
    [...stated, { name: 'age', levels: [...new Set(ages)] }],
    screens.map(({ screen }, place) => ({
      means: screen.means,
      levels: [...stated.map(({ own }) => own[place] ?? NOT_STATED), screen.age.text],
    })),
  )
}
