/** Figures of a bench as lines to read. */

/** One part at one size. */
export interface Measure {
  readonly what: string
  readonly lots: number
  readonly seconds: number
  readonly peakMB: number
  readonly detail?: Record<string, number>
  /** Why the part did not end well: a line that it wrote, or how it ended. */
  readonly failed?: string
}

/** A part that has ended, while others run. */
export function progress({ what, lots, seconds, peakMB, failed }: Measure): string {
  const peak = failed === undefined ? `${peakMB.toFixed(0)} MB` : failedWords(failed)
  return `${lots === 0 ? '' : `${lots} lots, `}${what}: ${seconds.toFixed(1)} s, ${peak}\n`
}

function failedWords(failed: string): string {
  return `failed: ${failed}`
}

/** What each part is held against, measured in the same run. */
const BESIDE: Readonly<Record<string, readonly string[]>> = {
  check: ['yaml-floor'],
  build: ['build-floor', 'eleventy', 'copy'],
}

export function table(measures: readonly Measure[]): string {
  const head = '| lots | part | seconds | ms a lot | peak MB | against |\n|---:|---|---:|---:|---:|---|\n'
  return (
    head +
    measures
      .filter(({ lots }) => 0 < lots)
      .map((measure) => {
        const ratio = (measure.failed === undefined ? (BESIDE[measure.what] ?? []) : [])
          .flatMap((name) => measures.filter(({ what, lots }) => what === name && lots === measure.lots))
          .filter(({ failed }) => failed === undefined)
          .map((other) => `${(measure.seconds / other.seconds).toFixed(2)} x ${other.what}`)
          .join(', ')
        const { lots, what, seconds, peakMB, failed } = measure
        const aLot = (1000 * seconds) / lots
        const cells = [
          ...[lots, what, seconds.toFixed(2), aLot.toFixed(2)],
          ...(failed === undefined ? [peakMB.toFixed(0), ratio] : ['', failedWords(failed)]),
        ]
        return `| ${cells.join(' | ')} |\n`
      })
      .join('') +
    sizeLines(measures) +
    checkLines(measures) +
    judgingLines(measures) +
    studyLines(measures)
  )
}

/** What lies on the disk. */
function sizeLines(measures: readonly Measure[]): string {
  const sizes = { archiveMB: 'issued documents and their parts', siteMB: 'the site' }
  return measures
    .flatMap(({ lots, detail = {} }) =>
      Object.entries(sizes).flatMap(([name, words]) => {
        const size = detail[name]
        return size === undefined ? [] : [`\n${lots} lots: ${words} ${size.toFixed(1)} MB\n`]
      }),
    )
    .join('')
}

/**
 * Checks and histories beside the computing that they look at: at most half of it is the aim, and linear where the
 * microseconds a lot stay.
 */
function checkLines(measures: readonly Measure[]): string {
  return measures
    .filter(({ what }) => what === 'checks-and-history')
    .map(({ lots, detail = {} }) => {
      const [compute = 0, checks = 0, history = 0] = ['compute', 'checks', 'history'].map(
        (name) => detail[`${name}Seconds`],
      )
      const both = checks + history
      return (
        `\n${lots} lots of ${detail['sources']} sources: lots ${compute.toFixed(2)} s, ` +
        `histories ${history.toFixed(2)} s, checks ${checks.toFixed(2)} s; histories and checks take ` +
        `${(both / compute).toFixed(2)} of what the lots take, ${(both / (compute + both)).toFixed(2)} of ` +
        `all computing, ${((1e6 * both) / lots).toFixed(0)} µs a lot\n`
      )
    })
    .join('')
}

/** The cost of judging for itself, since reading and computing take most of its part's time. */
function judgingLines(measures: readonly Measure[]): string {
  return measures
    .filter(({ what }) => what === 'judge')
    .map(({ lots, detail = {} }) => {
      const seconds = (name: string) => `${detail[name]?.toFixed(2)} s`
      const judging = [
        `${detail['verdicts']} verdicts of ${detail['clauses']} clauses in ${seconds('judgeSeconds')}`,
        `${detail['microsecondsAClause']?.toFixed(1)} µs a clause`,
        `${detail['lotsTimesClausesASecond']} lots × clauses a second`,
      ].join(', ')
      const doubt =
        `intervals ${seconds('intervalSeconds')} and explanations ${seconds('explainSeconds')} ` +
        `for ${detail['indices']} indices`
      const computing = `${(detail['computeSeconds'] ?? 0).toFixed(2)} s of computing`
      return `\n${lots} lots: ${judging}; ${doubt}, beside ${computing}\n`
    })
    .join('')
}

/** Each within a second is the aim. */
function studyLines(measures: readonly Measure[]): string {
  return measures
    .filter(({ what }) => what === 'studies')
    .map(
      ({ detail = {} }) =>
        `\nstudies: 20 laboratories × 30 materials × 4 replicates ${detail['roundRobinSeconds']?.toFixed(2)} s; ` +
        `60 materials × 12 conditions with 2,000 resamples ${detail['screeningSeconds']?.toFixed(2)} s\n`,
    )
    .join('')
}
