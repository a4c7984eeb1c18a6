/** A condition in itself: each age once, and water that a mortar can be made with. */
import { isSameAge } from '../../core/measure/age.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { DescribedCondition } from '../records.ts'
import { checkWater } from './water.ts'

export function checkCondition(condition: DescribedCondition, report: FileReport): void {
  checkWater(condition.water['control-water'], condition.batch, '/water/control-water', report)
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
