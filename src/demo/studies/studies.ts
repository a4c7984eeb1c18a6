/** The invented studies: records and the tables of their readings. */
import { plannedFiles } from './planned-study.ts'
import { roundRobinFiles } from './round-robin-study.ts'
import { ruggednessFiles } from './ruggedness-study.ts'
import { screeningFiles } from './screening-study.ts'
import { twelveRunFiles } from './twelve-run-study.ts'

export function studyFiles(): { path: string; text: string }[] {
  return [
    ...screeningFiles(),
    ...roundRobinFiles(),
    ...ruggednessFiles(),
    ...twelveRunFiles(),
    ...plannedFiles(),
  ]
}
