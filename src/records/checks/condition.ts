/** A condition in itself: each age once, water that a mortar can be made with, details that agree with each other. */
import { isSameAge } from '../../core/measure/age.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { DescribedCondition } from '../records.ts'
import { checkBenchDetails } from './bench-details.ts'
import { checkWater } from './water.ts'

export function checkCondition(condition: DescribedCondition, report: FileReport): void {
  checkWater(condition.water['control-water'], condition.batch, '/water/control-water', report)
  checkBenchDetails(condition, report)
  const ages = condition.ages.map((entry) => entry.age)
  ages.forEach((age, index) => {
    const first = ages.findIndex((other) => isSameAge(other, age))
    if (first === index) return
    report.at(
      `/ages/${index}/age`,
      'duplicate-id',
      `the age ${age} is listed twice`,
      'keep one of the two; an age has one tolerance',
      [report.place(`/ages/${first}/age`, 'the first entry of this age')],
    )
  })
}
