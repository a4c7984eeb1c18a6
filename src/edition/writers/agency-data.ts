/** Producer against agency as data of the check report. */
import type { IndependentComparison } from '../../core/agency/independent-comparison.ts'
import { areOpposite, isBeyond, type Pair } from '../../core/agency/pairs.ts'
import type { TestKey } from '../../core/agency/precision.ts'
import type { SourceAgency } from '../../core/agency/source-agency.ts'
import type { SplitComparison } from '../../core/agency/split-comparison.ts'

/** Null where the agency's results are not to be seen. */
export function agencyData(agency: SourceAgency | null): unknown {
  if (agency === null) return null
  const { splits, independents, status, split, independent } = agency
  return {
    splits,
    independents,
    status: status.map(({ kind, from, to, planned, taken, missing, over }) => ({
      kind,
      from: from.text,
      to: to.text,
      planned,
      taken,
      missing,
      over,
    })),
    split: split.map(splitData),
    independent: independent.map(independentData),
  }
}

function splitData(found: SplitComparison): unknown {
  const { n, mean, paired, precision, opposite, pairs } = found
  return {
    ...testData(found),
    n,
    mean,
    interval: paired?.interval ?? null,
    t: paired?.t ?? null,
    p: paired?.p ?? null,
    beyond: precision?.beyond ?? null,
    withLimit: precision?.of ?? 0,
    expectedByChance: precision?.expected ?? null,
    opposite,
    pairs: pairs.map(pairData),
  }
}

function independentData(found: IndependentComparison): unknown {
  const { from, to, agency, producer, level, f, form, t, power, opposite, pairs } = found
  return {
    ...testData(found),
    from: from.text,
    to: to.text,
    agency,
    producer,
    level,
    f: f === null ? null : { ratio: Number.isFinite(f.ratio) ? f.ratio : null, df: f.df, p: f.p },
    t: t === null ? null : { form, difference: t.difference, t: t.t, df: t.df, p: t.p },
    power,
    opposite,
    pairs: pairs.map(pairData),
  }
}

function testData({ property, condition, age }: TestKey) {
  return { property, condition: condition ?? null, age: age?.text ?? null }
}

/** Values in the stored unit of the property. */
function pairData(pair: Pair): unknown {
  const { lot, tested, producer, agency, difference, allowed } = pair
  return {
    lot,
    tested: tested.text,
    producer: producer.value,
    agency: agency.value,
    difference,
    limit: allowed?.limit ?? null,
    beyond: isBeyond(pair),
    opposite: areOpposite(pair),
  }
}
