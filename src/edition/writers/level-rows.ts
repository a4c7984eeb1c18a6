/** How the precision of a round robin goes with the level, as rows. */
import { levelFits, type PrecisionLevel } from '../../core/studies/interlaboratory/level-dependence.ts'
import { precisionLevels, type RoundRobinMaterial } from '../../core/studies/interlaboratory/round-robin.ts'
import type { StudyRow } from './study-data.ts'

/** Three rows for each law, route, condition and age: coefficients and misfit, with the number of levels. */
export function levelRows(materials: readonly RoundRobinMaterial[]): StudyRow[] {
  const groups = Map.groupBy(materials, ({ property, condition, age }) =>
    [property, condition, age.hours].join(' '),
  )
  return [...groups.values()].flatMap((own) => {
    const [first] = own
    if (first === undefined) return []
    const { repeatability, reproducibility } = precisionLevels(own)
    const of = { property: first.property, condition: first.condition, age: first.age.text }
    return [
      ...lawRows('repeatability-deviation', repeatability),
      ...lawRows('reproducibility-deviation', reproducibility),
    ].map((row): StudyRow => ({ ...of, ...row }))
  })
}

type Figure = Pick<StudyRow, 'statistic' | 'value' | 'interval' | 'n'>

function lawRows(statistic: string, levels: readonly PrecisionLevel[]): Figure[] {
  return levelFits(levels).flatMap(({ law, ...figures }) =>
    Object.entries(figures).map(([name, value]) => ({
      ...{ statistic: `${statistic}-${law}-${name}`, value, interval: null },
      n: levels.length,
    })),
  )
}
