/** The site's own data files as records, so that a lot can be read and judged against them. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { readCriterion } from '../../core/criteria/read-criterion.ts'
import { dateOf, laterOf, type Moment, offsetMinutes, readMoment } from '../../core/measure/moment.ts'
import type { WithTexts } from '../../core/measure/texts-of-times.ts'
import type { DescribedCondition, Records } from '../../records/records.ts'
import { converterOf } from '../../records/schema/convert.ts'
import type { Condition, Control, Laboratory, Site, Source } from '../../records/schema/loaded-records.ts'
import type { RecordKind } from '../../records/schema/schemas.ts'

type Written = Readonly<Record<string, unknown>>

/** data/bench.json */
export interface BenchFile {
  readonly asOf: string
  readonly site: { readonly offset?: string }
  readonly laboratories: Written
  readonly sources: Written
  /** Sets that the program ships and the site does not have, with conditions that they name. */
  readonly shipped?: {
    readonly criteria: Readonly<Record<string, WithTexts<Criterion>>>
    readonly conditions: Written
  }
}

/** The files by what they hold. */
export interface SiteFiles {
  readonly bench: BenchFile
  readonly conditions: Written
  readonly controls: Written
  readonly criteria: Readonly<Record<string, WithTexts<Criterion>>>
}

export interface SiteRecords {
  readonly records: Records
  /** Day of the site's edition. */
  readonly asOf: Moment
}

/** @throws RangeError for a file that is not of the site's form */
export function siteRecords({ bench, conditions, controls, criteria }: SiteFiles): SiteRecords {
  const sortedAt = bench.site.offset === undefined ? 0 : offsetMinutes(bench.site.offset)
  const read = <T>(kind: RecordKind, file: Written): Map<string, T> => {
    const convert = converterOf(kind)
    const fault = (pointer: string) => {
      throw new RangeError(`siteRecords needs records of the site, got a ${kind} with a fault at ${pointer}`)
    }
    // Their form was checked when the site was built.
    return new Map(Object.entries(file).map(([id, record]) => [id, convert(record, fault, sortedAt) as T]))
  }
  const every = [...read<Condition>('condition', { ...bench.shipped?.conditions, ...conditions })]
  const site = read<Site>('site', { site: bench.site }).get('site')
  if (site === undefined) throw new RangeError('siteRecords needs a file with the site, got none')
  return {
    asOf: readMoment(bench.asOf),
    records: {
      contentDir: '',
      unsoundDocuments: new Set(),
      faultyNumbers: new Map(),
      site,
      producers: new Map(),
      laboratories: read<Laboratory>('laboratory', bench.laboratories),
      sources: read<Source>('source', bench.sources),
      conditions: new Map(
        every.flatMap(([id, condition]) => (isDescribed(condition) ? [[id, condition]] : [])),
      ),
      announcedConditions: new Map(every.filter(([, condition]) => !isDescribed(condition))),
      controls: read<Control>('control', controls),
      criteria: new Map(
        Object.entries({ ...bench.shipped?.criteria, ...criteria }).map(([id, file]) => [
          id,
          readCriterion(file),
        ]),
      ),
      lots: new Map(),
      studies: new Map(),
      methods: [],
    },
  }
}

/** A site that states no day is read on the day on which somebody works. */
export function dayOfWork({ records, asOf }: SiteRecords, today: Moment): string {
  return dateOf(records.site['as-of'] ?? laterOf(asOf, today)).text
}

function isDescribed(condition: Condition): condition is DescribedCondition {
  return condition.standing !== 'details-to-be-entered'
}
