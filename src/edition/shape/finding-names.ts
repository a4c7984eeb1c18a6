/** The names that findings print, taken from an edition's records. */
import { everyClause, setName } from '../../core/criteria/criterion.ts'
import { nameInSource, sourceOf } from '../../core/measure/lot-id.ts'
import { clauseTitle } from '../../words/clause-titles.ts'
import type { FindingNames } from '../../words/finding-names.ts'
import { conditionTitle } from './condition-title.ts'
import type { Edition } from './edition.ts'
import { namedSource } from './named-source.ts'

/** What names are taken from. */
export type NamingEdition = Pick<
  Edition,
  'site' | 'sources' | 'laboratories' | 'conditions' | 'announcedConditions' | 'criteria' | 'lots'
>

/** Lots that are not shown have given way to null before a finding is worded. */
export function findingNames(edition: NamingEdition): FindingNames {
  const { site, laboratories, criteria, lots } = edition
  const source = (id: string) => namedSource(edition, id)?.name ?? id
  const number = (id: string) => lots.get(id)?.number ?? nameInSource(id)
  const condition = (id: string) => conditionTitle(edition, id)
  return {
    units: site.units,
    source,
    laboratory: (id) => laboratories.get(id)?.name ?? id,
    condition,
    criterion: (id) => {
      const set = criteria.get(id)
      return set === undefined ? id : setName(set)
    },
    clause: (criterion, id) => {
      const set = criteria.get(criterion)
      const clause = set && [...everyClause(set.clauses)].find((one) => one.id === id)
      return clause === undefined ? id : clauseTitle(clause, condition)
    },
    lot: (id) => `lot ${number(id)} of ${source(sourceOf(id))}`,
    number,
  }
}
