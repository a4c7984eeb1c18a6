/** A study's page: what all kinds have, and what its own kind shows. */
import type { Edition } from '../../shape/edition.ts'
import { type PlanDigestView, planDigestView } from './plan-digest-view.ts'
import { type ProgrammeView, programmeView } from './programme-view.ts'
import { type ReferenceTestsView, referenceTestsView } from './reference/reference-tests-view.ts'
import { type RoundRobinView, roundRobinView } from './round-robin-view.ts'
import { type RuggednessView, ruggednessView } from './ruggedness-view.ts'
import { type ScreeningView, screeningView } from './screening-view.ts'
import { type StudyHead, studyHead } from './study-head.ts'

export interface StudyPage {
  readonly head: StudyHead
  readonly screening: ScreeningView | null
  readonly roundRobin: RoundRobinView | null
  readonly ruggedness: RuggednessView | null
  readonly referenceTests: ReferenceTestsView | null
  readonly digest: PlanDigestView
  readonly programme: ProgrammeView | null
}

/** @throws RangeError for a study that is not in the edition */
export function studyPage(edition: Edition, id: string): StudyPage {
  const study = edition.study(id)
  const { readings } = study
  // Without a reading there is nothing to draw, whatever the kind.
  const found = readings === 0 ? null : study.found
  return {
    head: studyHead(study),
    screening: found?.kind === 'screening' ? screeningView(study, found.routes, edition.site.units) : null,
    roundRobin: found?.kind === 'interlaboratory' ? roundRobinView(study, found.materials) : null,
    ruggedness: found?.kind === 'ruggedness' ? ruggednessView(study, found.effects) : null,
    digest: planDigestView(study),
    programme: programmeView(edition, study),
    referenceTests: referenceTestsView(study),
  }
}
