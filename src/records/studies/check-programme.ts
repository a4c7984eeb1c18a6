/** The programme of a study: what it names, whether it can be cast, and whether it can answer what is asked. */
import { castIn, testMortarCount } from '../../core/studies/programme/planned-mortars.ts'
import type { AllRecords } from '../checks/references.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { checkAges, checkCasting } from './check-casting.ts'
import { checkCrossing } from './check-crossing.ts'
import { checkProgrammeQuantities } from './check-programme-quantities.ts'
import { programmeOf } from './programme-of.ts'

type Written = NonNullable<Study['programme']>

/** More than a laboratory casts in years, so that beyond it a number is a slip. */
const MOST_TEST_MORTARS = 3000

const AT = '/programme'

/** Faults of a programme; where it names what there is and can be cast, what it leaves open. */
export function checkProgramme(study: Study, all: AllRecords, report: FileReport): void {
  const { programme } = study
  if (programme === undefined) return
  const before = report.count()
  checkNames(study, programme, report)
  checkProgrammeQuantities(study, programme, report)
  checkCrossing(study, programme, report)
  checkCasting(study, programme, report)
  checkAges(study, programme, all, report)
  if (report.count() === before) checkSize(study, all, report)
  if (report.count() === before) warnOfOneCement(study, all, report)
}

/** Codes that the study does not list. */
function checkNames(study: Study, programme: Written, report: FileReport): void {
  const conditions = Object.keys((study.kind === 'ruggedness' ? study.runs : study.conditions) ?? {})
  const word = study.kind === 'ruggedness' ? 'run' : 'condition'
  const listed = {
    material: Object.keys(study.materials),
    [word]: conditions,
    laboratory: Object.keys(study.laboratories ?? {}),
    cement: Object.keys(study.cements ?? {}),
  }
  const check = (what: string, codes: readonly string[] | undefined, pointer: string) => {
    for (const [place, code] of (codes ?? []).entries())
      checkCode(code, { what, listed: listed[what] ?? [], pointer: below(pointer, place) }, report)
  }
  check('material', programme.materials, `${AT}/materials`)
  check(word, programme.conditions, `${AT}/conditions`)
  check('laboratory', programme.laboratories, `${AT}/laboratories`)
  for (const [place, { materials, conditions: out }] of (programme['left-out'] ?? []).entries()) {
    const pointer = below(`${AT}/left-out`, place)
    check('material', materials, `${pointer}/materials`)
    check(word, out, `${pointer}/conditions`)
  }
  for (const [level, code] of Object.entries(programme.crossed?.cement ?? {}))
    checkCode(
      code,
      { what: 'cement', listed: listed.cement, pointer: below(`${AT}/crossed/cement`, level) },
      report,
    )
  if (programme.every?.cement !== undefined)
    checkCode(
      programme.every.cement,
      { what: 'cement', listed: listed.cement, pointer: `${AT}/every/cement` },
      report,
    )
}

function checkCode(
  code: string,
  { what, listed, pointer }: { readonly what: string; readonly listed: readonly string[]; pointer: string },
  report: FileReport,
): void {
  if (listed.includes(code)) return
  report.at(
    pointer,
    'reference-unknown',
    `the study lists no ${what} "${code}"`,
    nearNames(code, listed) || 'list it in the study',
  )
}

/** How much is cast, asked only of a programme whose names are known. */
function checkSize(study: Study, all: AllRecords, report: FileReport): void {
  const { kind, plan } = study
  if (plan.batches === undefined)
    report.atKey('/plan', 'key-missing', 'the plan does not say how many batches are cast', 'add batches: 3')
  const programme = programmeOf(study, all.conditions)
  if (programme === null) return
  const mortars = testMortarCount(programme)
  if (MOST_TEST_MORTARS < mortars)
    report.atKey(
      AT,
      'programme',
      `the programme has ${mortars} test mortars, and ${MOST_TEST_MORTARS} at most are laid out`,
      'cast fewer materials, conditions, laboratories or batches',
    )
  if (mortars === 0)
    report.atKey(AT, 'programme', 'the programme leaves every cell out', 'remove some of left-out')
  if (kind !== 'screening') return
  const lone = programme.materials.find(
    (material) => !programme.conditions.some(({ code }) => castIn(programme, code).includes(material)),
  )
  if (lone !== undefined && 0 < mortars)
    report.atKey(
      `${AT}/left-out`,
      'programme',
      `the material ${lone} is left out of every condition`,
      'take it off the materials of the programme, or cast it somewhere',
    )
}

/** One cement cannot show what another would do; a programme of one may be meant all the same. */
function warnOfOneCement(study: Study, all: AllRecords, report: FileReport): void {
  const conditions = programmeOf(study, all.conditions)?.conditions ?? []
  const cements = new Set(conditions.flatMap(({ cement }) => (cement === null ? [] : [cement])))
  if (1 < cements.size) return
  const [only] = cements
  report.warnAt(
    AT,
    'programme-design',
    only === undefined
      ? 'the programme names no cement'
      : `the programme has the one cement ${only}, and an index depends on the cement`,
    'cast with two cements at least, or say in the plan why one must do',
  )
}
