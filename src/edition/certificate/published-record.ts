/** Records of lots and sources as an audience may see them: `publishing.ts` asks for them and nobody else. */
import { defined } from '../../core/measure/defined.ts'
import { roleOf } from '../../core/mortar/mortar.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import { NOT_PUBLISHED } from '../../words/withheld.ts'
import type { Edition } from '../shape/edition.ts'
import { producersRecord } from '../shape/producers-results.ts'

/** What site.yaml publishes. */
export type Publish = ReadonlySet<string>

/** A lot's record without what is not published; where it was imported from is nobody's but the producer's. */
export function publicRecord(whole: Lot, publish: Publish): Lot {
  const record = publish.has('verification') ? whole : withoutAgencys(whole)
  const {
    imported: _,
    verification,
    seals,
    shipments,
    revisions,
    answers,
    'purchase-order': order,
    ...rest
  } = record
  const persons = publish.has('persons')
  return {
    ...rest,
    samples: record.samples.map(({ by, seal, ...sample }) => ({
      ...sample,
      ...(persons && by !== undefined ? { by } : {}),
      ...(publish.has('seals') && seal !== undefined ? { seal } : {}),
    })),
    ...(seals !== undefined && publish.has('seals') ? { seals } : {}),
    ...(order !== undefined && publish.has('purchase-order') ? { 'purchase-order': order } : {}),
    ...(verification !== undefined
      ? { verification: verification.map((one) => withoutSampler(one, publish)) }
      : {}),
    ...(answers !== undefined && publish.has('findings')
      ? { answers: answers.map((answer) => publicAnswer(answer, publish)) }
      : {}),
    ...(revisions === undefined
      ? {}
      : {
          revisions: persons
            ? revisions
            : revisions.map((revision) => ({ ...revision, by: NOT_PUBLISHED.name })),
        }),
    ...(shipments === undefined
      ? {}
      : {
          shipments: shipments.map(
            ({ to, project, seal, vehicle: __, 'purchase-order': ordered, ...shipment }) => ({
              ...shipment,
              ...(publish.has('consignee') && to !== undefined ? { to } : {}),
              ...(publish.has('project') && project !== undefined ? { project } : {}),
              ...(publish.has('seals') && seal !== undefined ? { seal } : {}),
              ...(publish.has('purchase-order') && ordered !== undefined
                ? { 'purchase-order': ordered }
                : {}),
            }),
          ),
        }),
  }
}

/** Without what an agency sampled and found: that it sampled the lot is told with what it found. */
function withoutAgencys(record: Lot): Lot {
  const { verification: _, ...own } = producersRecord(record)
  return { ...own, samples: own.samples.filter(({ id }) => roleOf(id, own) === 'producer') }
}

/** Answers stand beside their findings and are published with them, without persons, consignees and bills as asked. */
function publicAnswer(
  { by, told, 'disposed-by': disposedBy, ...answer }: NonNullable<Lot['answers']>[number],
  publish: Publish,
): NonNullable<Lot['answers']>[number] {
  return {
    ...answer,
    by: publish.has('persons') ? by : NOT_PUBLISHED.name,
    ...defined({
      'disposed-by': publish.has('persons') ? disposedBy : undefined,
      told: publish.has('consignee') ? told : undefined,
    }),
  }
}

/** What the lot's record withholds, the source's does too, and a lot that is not shown is not named. */
export function publicSourceRecord(
  { shipments: _shipments, 'verification-plan': plan, answers, diverted, ...rest }: Source,
  id: string,
  shown: Edition['lots'],
  publish: Publish,
): Source {
  return {
    ...rest,
    ...defined({
      answers: publish.has('findings') ? answers?.map((answer) => publicAnswer(answer, publish)) : undefined,
      diverted: diverted?.map(({ lot, ...entry }) => ({
        ...entry,
        ...defined({ lot: lot === undefined || !shown.has(`${id}/${lot}`) ? undefined : lot }),
      })),
      'verification-plan': publish.has('verification')
        ? plan?.map((one) => withoutSampler(one, publish))
        : undefined,
    }),
  }
}

function omitted<T extends object>(record: T, keys: readonly (keyof T)[]): T {
  return Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key as keyof T))) as T
}

function withoutSampler<T extends { readonly sampler?: string }>(one: T, publish: Publish): T {
  return publish.has('persons') ? one : omitted(one, ['sampler'])
}
