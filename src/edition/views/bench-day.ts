/** The record of a resistivity test as the bench meets it, stage by stage, with what it does not say. */
import type { BenchCondition } from '../../core/resistivity/bench-condition.ts'
import { benchDay, type BenchLine } from '../../core/resistivity/bench-day.ts'
import { BENCH_DETAILS, BENCH_STAGES, benchDetailWords, completenessWords } from '../../words/bench-day.ts'
import { fullSentence, listWords, sentence, unbroken } from '../../words/sentences.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'

export interface BenchDayView {
  /** How many details are recorded, and which are not. */
  readonly completeness: string
  readonly stages: readonly BenchStageView[]
}
export interface BenchStageView {
  readonly label: string
  /** Null where nothing of the stage is recorded. */
  readonly text: string | null
  /** "not recorded: renewal of the liquid", "not recorded" of all of a stage; null where nothing is missing. */
  readonly missing: string | null
}

/** @returns null for a condition without a resistivity test */
export function benchDayView(condition: BenchCondition, units: UnitSystem): BenchDayView | null {
  const lines = benchDay(condition)
  if (lines.length === 0) return null
  const stages = [...Map.groupBy(lines, ({ stage }) => stage)]
  return {
    completeness: unbroken(fullSentence(completenessWords(lines))),
    stages: stages.map(([stage, own]) => ({
      label: BENCH_STAGES[stage],
      ...stageWords(own, condition, units),
    })),
  }
}

/** The line above names what a stage without any record lacks. */
const NOTHING = 'not recorded'

function stageWords(
  lines: readonly BenchLine[],
  condition: BenchCondition,
  units: UnitSystem,
): Pick<BenchStageView, 'text' | 'missing'> {
  const said = lines.flatMap(({ detail }) => benchDetailWords(detail, condition, units) ?? [])
  const missing = lines.filter(({ recorded }) => !recorded).map(({ detail }) => BENCH_DETAILS[detail])
  if (said.length === 0) return { text: null, missing: NOTHING }
  return {
    text: unbroken(sentence(said.join('; '))),
    missing: missing.length === 0 ? null : `not recorded: ${listWords(missing, 'and')}`,
  }
}
