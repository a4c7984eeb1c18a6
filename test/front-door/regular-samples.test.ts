/** Averages and ranges of a lot's regular samples stand beside its composite on the certificate. */
import { describe, expect, it } from 'vitest'
import { told } from './fields-front-door.ts'
import { lotText, SHARED, type TrialAnalysis } from './front-door.ts'

const DAILY = ['2026-02-25', '2026-02-26', '2026-02-27']
const samples = DAILY.map((day, place) => `{ id: R${place + 1}, kind: grab, on: ${day} }`)
const daily = (...results: readonly string[]): TrialAnalysis[] =>
  results.map((own, place) => ({ sample: `R${place + 1}`, results: own }))

/** Lead and items of each line of results without a limit, as they are read. */
const lines = (analyses: readonly TrialAnalysis[], units = 'SI') => {
  const { internal, diagnostics } = told({
    'site.yaml': (new Map(SHARED).get('site.yaml') ?? '').replace('units: SI', `units: ${units}`),
    'lots/tuff/L1.yaml': lotText({ samples, analyses }, 0),
  })
  expect(diagnostics).toEqual([])
  return internal
    .lot('tuff/L1')
    .certificate()
    .lot.tables.flatMap(({ plain }) => plain)
    .map(({ lead, items }) =>
      [lead, ...items.map(({ name, value, detail }) => `${name} ${value}${detail ?? ''}`)]
        .filter((part) => part !== undefined)
        .join(' ')
        .replaceAll('\u00a0', ' '),
    )
}
const LEAD = 'Regular samples of the lot taken together, beside the composite:'

describe('regular samples of a lot', () => {
  it('are told by number, mean and range, in the decimals of the property', () => {
    // (3.0 + 3.5 + 3.3) / 3 = 9.8 / 3 = 3.267; (8.0 + 9.0 + 8.8) / 3 = 25.8 / 3 = 8.6.
    const found = lines([
      ...daily(
        'loss-on-ignition: 3.00 %, residue-45um: 8.0 %',
        'loss-on-ignition: 3.50 %, residue-45um: 9.0 %',
        'loss-on-ignition: 3.30 %, residue-45um: 8.8 %',
      ),
      { results: 'loss-on-ignition: 3.21 %' },
    ])
    expect(found).toContain(`${LEAD} Loss on ignition mean 3.27 % (n 3, 3.00 % to 3.50 %; composite 3.21 %)`)
    expect(found).toContain(
      `${LEAD} Residue on 45 µm, wet mean 8.6 % (n 3, 8.0 % to 9.0 %; not tested on a composite)`,
    )
  })
  it('are told as bounds where one lies below the limit of determination', () => {
    const found = lines(daily('SO3: < 0.10 %', 'SO3: 0.20 %'))
    expect(found).toContain(
      `${LEAD} SO₃ mean between 0.10 and 0.15 % (n 2, < 0.10 % to 0.20 %; not tested on a composite)`,
    )
  })
  it('are not taken together where there is one', () => {
    expect(lines(daily('SO3: 0.20 %')).join()).not.toContain(LEAD)
  })
  it('have the names of the trade in US units', () => {
    expect(lines(daily('residue-45um: 8.0 %', 'residue-45um: 9.0 %'), 'US').join()).toContain(
      'Fineness, retained on No. 325 mean 8.5 %',
    )
  })
})
