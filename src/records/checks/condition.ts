/** A condition in itself: each age once. */
import { isSameAge } from '../../core/measure/age.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { DescribedCondition } from '../records.ts'

export function checkCondition(condition: DescribedCondition, report: FileReport): void {
  const ages = condition.ages.map((entry) => entry.age)
  ages.forEach((age, index) => {
    if (ages.findIndex((other) => isSameAge(other, age)) === index) return
    report.at(
      `/ages/${index}/age`,
      'duplicate-id',
      `the age ${age} is listed twice`,
      'keep one of the two; an age has one tolerance',
    )
  })
}
