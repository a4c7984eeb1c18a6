/** Crossed factors of a programme, and the fraction of them that is cast. */
import { crossedCount } from '../../core/studies/programme/crossed.ts'
import { definingRelation, inseparable } from '../../core/studies/programme/fraction.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { effectText } from '../../words/programme.ts'
import { crossedFactors, crossedOf, definingWords, MOST_CONDITIONS } from './crossed-conditions.ts'

type Written = NonNullable<Study['programme']>

const AT = '/programme'

/** Faults of what is crossed; a fraction that cannot tell apart what is asked is one. */
export function checkCrossing(study: Study, programme: Written, report: FileReport): void {
  const { crossed, fraction } = programme
  if (crossed === undefined) {
    if (fraction !== undefined)
      report.atKey(
        `${AT}/fraction`,
        'programme',
        'a fraction needs factors that are crossed',
        'add crossed, or list under conditions what is cast',
      )
    return
  }
  if (study.kind === 'ruggedness') {
    report.atKey(
      `${AT}/crossed`,
      'key-unknown',
      'crossed has no place in a study of the kind ruggedness, whose runs state the levels',
      'remove it, or change the kind',
    )
    return
  }
  const count = crossedCount(crossedFactors(programme))
  if (MOST_CONDITIONS < count) {
    report.atKey(
      `${AT}/crossed`,
      'programme',
      `the factors make ${count} conditions, and a study has ${MOST_CONDITIONS} at most`,
      'cross fewer levels',
    )
    return
  }
  checkCodes(study, report)
  checkTwice(programme, report)
  checkLevels(crossed, report)
  if (fraction !== undefined) checkFraction(programme, fraction, report)
}

function checkCodes(study: Study, report: FileReport): void {
  const codes = crossedOf(study).map(({ code }) => code)
  const long = codes.find((code) => 16 < code.length)
  if (long !== undefined)
    report.atKey(
      `${AT}/crossed`,
      'programme',
      `the code ${long} that the levels make has more than 16 signs`,
      'give the levels shorter codes',
    )
  const twice = codes.find((code, place) => codes.indexOf(code) !== place)
  if (twice !== undefined)
    report.atKey(
      `${AT}/crossed`,
      'duplicate-id',
      `two conditions would have the code ${twice}`,
      'give the levels codes that cannot be read in two ways',
    )
  // Where a pointer leads nowhere, the place above it is given.
  const all = report.written('/conditions')
  for (const code of codes) {
    const own = report.written(`/conditions/${code}`)
    if (own !== undefined && own !== all)
      report.atKey(
        `/conditions/${code}`,
        'duplicate-id',
        `the programme makes a condition of the code ${code} too`,
        'give one of the two another code',
      )
  }
}

/** Two levels of one factor that are the same, so that nothing is varied. */
function checkLevels(crossed: NonNullable<Written['crossed']>, report: FileReport): void {
  for (const [factor, levels] of Object.entries(crossed)) {
    const seen = new Map<string, string>()
    for (const [code, level] of Object.entries<LevelValue>(levels)) {
      const value = typeof level === 'object' ? `${level.value}` : `${level}`
      const other = seen.get(value)
      seen.set(value, code)
      if (other !== undefined)
        report.at(
          `${AT}/crossed/${factor.replace('/', '~1')}/${code}`,
          'programme',
          `the levels ${other} and ${code} of ${factor} are the same`,
          'write levels that differ',
        )
    }
  }
}

type LevelValue = string | number | { readonly value: number }

/** A factor that is crossed and stated for all as well. */
function checkTwice({ crossed = {}, every = {} }: Written, report: FileReport): void {
  for (const factor of Object.keys(crossed))
    if (factor in every)
      report.atKey(
        `${AT}/every/${factor.replace('/', '~1')}`,
        'programme',
        `${factor} is crossed and is said to be the same in every condition`,
        'remove one of the two',
      )
}

function checkFraction(
  programme: Written,
  fraction: NonNullable<Written['fraction']>,
  report: FileReport,
): void {
  const factors = crossedFactors(programme)
  const named = [...Object.entries(fraction.generators).flat(2), ...(fraction.asked ?? []).flat()]
  const unknown = named.find((name) => !factors.some((factor) => factor.name === name))
  if (unknown !== undefined) {
    report.atKey(
      `${AT}/fraction`,
      'programme',
      `the fraction names ${unknown}, which is not crossed`,
      `name one of: ${factors.map(({ name }) => name).join(', ')}`,
    )
    return
  }
  const words = definingWords(programme)
  const uneven = factors.find(({ name, levels }) => levels.length !== 2 && words.flat().includes(name))
  if (uneven !== undefined) {
    report.atKey(
      `${AT}/fraction/generators`,
      'programme',
      `${uneven.name} has ${uneven.levels.length} levels, and a generator needs factors of two`,
      'leave it out of the generators, or give it two levels',
    )
    return
  }
  const repeated = words.find((word) => new Set(word).size !== word.length)
  if (repeated !== undefined || definingRelation(words).some((product) => product.length === 0)) {
    report.atKey(
      `${AT}/fraction/generators`,
      'programme',
      'the generators repeat each other or a factor, so that they do not say which conditions are cast',
      'write each factor once, and each generator of other factors',
    )
    return
  }
  const asked = fraction.asked ?? factors.map(({ name }) => [name])
  const [mixed] = inseparable(asked, words)
  if (mixed !== undefined)
    report.atKey(
      fraction.asked === undefined ? `${AT}/fraction/generators` : `${AT}/fraction/asked`,
      'programme',
      `the fraction cannot tell ${effectText(mixed.effect)} from ${effectText(mixed.from)}`,
      'choose a generator of more factors, ask for fewer effects, or cast all conditions',
    )
}
