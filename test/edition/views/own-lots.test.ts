import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { ownLotsView } from '../../../src/edition/views/studies/own-lots.ts'
import { loadRecords } from '../../../src/records/load.ts'

const view = ownLotsView(computeEdition(loadRecords('content').records, { program: 'test' }))

function line(route: number, name: RegExp) {
  const found = view.routes[route]?.table.find((one) => name.test(one.name))
  if (found === undefined) throw new RangeError(`the demo needs a condition ${name}`)
  return found
}

describe('ownLotsView', () => {
  // Counted with Python and scipy 1.17.1 (mannwhitneyu over all pairs) from what check --json prints of each lot.
  it('lets inert lots pass the usual index that it tells least apart', () => {
    const usual = line(0, /20\s%.*, 7\sd$/)
    expect(usual.limits).toEqual([
      expect.stringMatching(/75\s%: 13 of 14 inert lots meet it, 11 of 109 reactive lots do not$/),
    ])
    expect(usual.areaOfLots).toBe('0.66')
  })
  it('sets the classes apart at 50 °C by both routes', () => {
    for (const route of [0, 1])
      expect(line(route, /50\s°C.*28\sd$/)).toMatchObject({ wrong: 'none', areaOfLots: '1.00' })
  })
  it('warns that lots of one source are one material', () => {
    expect(view.unit).toMatch(/14 inert lots from 1 source: .* one material.* With one inert source/)
  })
})
