/** How findings name what they speak of: as print names it, so that nobody has to know the ids of records. */
import type { UnitSystem } from './unit-systems.ts'

/** Each takes an id; one that no record has is printed as it is. */
export interface FindingNames {
  readonly units: UnitSystem
  /** "Skarnmere fly ash" */
  readonly source: (id: string) => string
  /** "North Quay laboratory" */
  readonly laboratory: (id: string) => string
  /** "20 %, 23 °C, constant flow" */
  readonly condition: (id: string) => string
  /** "ASTM C618, edition 2012a" */
  readonly criterion: (id: string) => string
  /** The title of a clause of a criterion. */
  readonly clause: (criterion: string, clause: string) => string
  /** The lot with its source: "lot SA-2024-002 of Skarnmere fly ash". */
  readonly lot: (id: string) => string
  /** The printed number alone, where its source goes without saying: "SA-2024-002". */
  readonly number: (id: string) => string
}
