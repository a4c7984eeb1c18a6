import { describe, expect, it } from 'vitest'
import { type Finding, findingOn } from '../../../src/core/checks/finding.ts'
import { byReadingOrder } from '../../../src/core/checks/reading-order.ts'

const judged = (issued: 'meets' | 'does-not-meet', today: 'meets' | 'does-not-meet') => {
  const params = { lot: 'vale/A', revision: 0, changes: [{ criterion: 'base', issued, today }] }
  return findingOn('warning', 'vale/A', { code: 'would-now-be-judged-otherwise', params }, issued)
}
const late = findingOn('information', 'vale', {
  code: 'no-independent-sample',
  params: { source: 'vale', splits: 1 },
})
const above = findingOn('warning', 'vale/A', {
  code: 'shipped-above-quantity',
  params: { lot: 'vale/A', shippedTonnes: 2, quantityTonnes: 1 },
})
const blocking: Finding = { ...late, id: 'blocking', severity: 'blocks' }

describe('byReadingOrder', () => {
  it('puts what blocks first, then a failure turned into a pass, then what practice would have block', () => {
    const mended = judged('does-not-meet', 'meets')
    const worsened = judged('meets', 'does-not-meet')
    const order = [late, worsened, above, mended, blocking].sort(byReadingOrder)
    expect(order.map(({ id }) => id)).toEqual([blocking, mended, above, worsened, late].map(({ id }) => id))
  })
})
