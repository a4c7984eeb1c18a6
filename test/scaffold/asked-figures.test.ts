import { describe, expect, it } from 'vitest'
import { shippedRecords } from '../../src/commands/shipped.ts'
import type { Criterion } from '../../src/core/criteria/criterion.ts'
import {
  type AskedOf,
  askedFacts,
  askedFigures,
  declaredProperties,
  reportedOn,
} from '../../src/scaffold/asked-figures.ts'

function shipped(id: string): Criterion {
  const set = shippedRecords().criteria.get(id)
  if (set === undefined) throw new RangeError(`shipped needs a shipped set, got ${id}`)
  return set
}

/** Each figure in a line: property, condition, age, method, limit. */
function lines(id: string, of: AskedOf): string[] {
  return askedFigures(shipped(id), of).map(({ property, condition, age, method, limit }) =>
    [property, condition, age?.text, method, limit === '' ? undefined : limit]
      .filter((part) => part !== undefined)
      .join(' | '),
  )
}

describe('askedFigures', () => {
  it('asks for what the clauses of a class need, sums by their parts, with the limits of that class', () => {
    expect(lines('c618-12a', { kind: 'coal-fly-ash', class: 'F' })).toEqual([
      'SiO2',
      'Al2O3',
      'Fe2O3',
      'SO3 | at most 5.0 %',
      'moisture | at most 3.0 %',
      'loss-on-ignition | at most 6.0 %',
      'residue-45um | at most 34 %',
      'density',
      'autoclave-expansion | at most 0.8 % in magnitude',
      'water-requirement | at most 105 %',
      'strength-activity-index | c311 | 7 d | at least 75 %',
      'strength-activity-index | c311 | 28 d | at least 75 %',
    ])
    expect(lines('c618-12a', { kind: 'raw-natural-pozzolan', class: 'N' })).toContain(
      'loss-on-ignition | at most 10.0 %',
    )
  })
  it('leaves out clauses of another class, optional ones and those for information', () => {
    const keys = (of: AskedOf) => lines('en450-1-2012', of)
    expect(keys({ kind: 'coal-fly-ash', class: 'A/S' })).toContain(
      'water-requirement | EN 450-1 | at most 95 %',
    )
    expect(keys({ kind: 'coal-fly-ash', class: 'A/N' }).join()).not.toContain('water-requirement')
    expect(lines('c618-12a', { kind: 'coal-fly-ash', class: 'F' }).join()).not.toContain('drying-shrinkage')
  })
  it('asks for the figures of every class where none is claimed, without a limit that depends on it', () => {
    expect(lines('c618-12a', { kind: 'coal-fly-ash', class: null })).toEqual(
      expect.arrayContaining(['SiO2', 'SO3', 'loss-on-ignition', 'residue-45um | at most 34 %']),
    )
  })
  it('asks for what decides whether a clause applies', () => {
    expect(lines('en450-1-2012', { kind: 'coal-fly-ash', class: 'A/N' })).toContain(
      'free-CaO | at most 2.5 %',
    )
    expect(lines('en450-1-2012', { kind: 'coal-fly-ash', class: 'A/N' })).toContain(
      'soundness-expansion | at most 10 mm',
    )
  })
  it('asks for a slag’s index at both ages, one of them without a limit', () => {
    expect(lines('c989-18', { kind: 'slag', class: '100' })).toEqual([
      'sulfide | at most 2.5 %',
      'strength-activity-index | c989 | 7 d',
      'strength-activity-index | c989 | 28 d | at least 90 %',
    ])
  })
})

describe('askedFacts and declaredProperties', () => {
  it('name what the source must state', () => {
    const of = { kind: 'coal-fly-ash', class: 'A/N' } as const
    expect(askedFacts(shipped('en450-1-2012'), of)).toEqual(['coal-only'])
    expect(declaredProperties(shipped('en450-1-2012'), of)).toEqual(['residue-45um', 'density'])
  })
})

describe('reportedOn', () => {
  it('takes sums apart and leaves out what is tested on mortar', () => {
    expect(reportedOn(['density', 'oxide-sum', 'strength-activity-index', 'SiO2'])).toEqual([
      'density',
      'SiO2',
      'Al2O3',
      'Fe2O3',
    ])
  })
})
