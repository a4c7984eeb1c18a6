import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { laboratoriesChanged } from '../../../src/core/checks/laboratory-changes.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

/** A lot of March 2026 whose density was found by each of the laboratories. */
function lot(day: number, ...laboratories: readonly string[]): AuditedLot {
  const results = laboratories.map((laboratory) => ({
    property: 'density',
    role: 'producer',
    valid: true,
    laboratory,
  }))
  return { id: `vale/${day}`, sampled: readMoment(`2026-03-0${day}`), results } as unknown as AuditedLot
}

describe('laboratoriesChanged', () => {
  it('asks about a laboratory that took over a test without a lot that both tested', () => {
    const { looked, findings } = laboratoriesChanged('vale', [
      lot(1, 'works'),
      lot(2, 'works'),
      lot(3, 'quay'),
    ])
    expect([looked, findings.map(({ id }) => id)]).toEqual([1, ['laboratory-unbridged/vale/works/quay']])
    const [found] = findings.map((finding) => wordedFinding(finding, PLAIN_NAMES))
    expect([found?.sentence, found?.evidence[0]?.replaceAll(/\s/g, ' ')]).toEqual([
      'Quay took over tests of vale from works, and no lot on record was tested by both',
      'first for lot 3, sampled 3 March 2026: density',
    ])
  })
  it('asks once about two laboratories that take turns', () => {
    const turns = [lot(1, 'works'), lot(2, 'quay'), lot(3, 'works'), lot(4, 'quay')]
    expect(laboratoriesChanged('vale', turns).findings).toHaveLength(1)
  })
  it('asks nothing of one laboratory, nor where a lot tested by both bridges the change', () => {
    expect(laboratoriesChanged('vale', [lot(1, 'works'), lot(2, 'works')])).toMatchObject({
      looked: 0,
      findings: [],
    })
    const bridged = [lot(1, 'works'), lot(2, 'quay'), lot(3, 'quay', 'works')]
    expect(laboratoriesChanged('vale', bridged)).toMatchObject({ looked: 1, findings: [] })
  })
})
