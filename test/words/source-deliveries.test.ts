/** Statements on what is late and what was shipped. */
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../src/core/measure/moment.ts'
import { saidText } from '../../src/words/said.ts'
import {
  balanceWords,
  gapsWords,
  lateWords,
  shippedRest,
  shippedWords,
  unshownWords,
  unusedWords,
} from '../../src/words/source-deliveries.ts'

const plainSpaces = (text: string) => text.replaceAll(/[\u00a0\u202f\u2009]/g, ' ')

describe('lateWords', () => {
  it('says of what period each count is', () => {
    expect(saidText(lateWords({ late: 1, overdue: 2, awaited: 4, gaps: 3, monthsWithout: 0 }))).toBe(
      'reports late 1, months without report 0, number gaps 3 in the last 12 months; results overdue today 2, 4 more awaited and not late',
    )
  })

  it('counts nothing that cannot be counted', () => {
    expect(saidText(lateWords({ late: 0, overdue: 0, awaited: 0, gaps: null, monthsWithout: null }))).toBe(
      'reports not planned, months without report not recorded, number gaps not counted in the last 12 months; results overdue today 0',
    )
  })
})

describe('shippedWords', () => {
  const counts = {
    shippedT: 2212,
    certifiedT: 29_800,
    failedT: 0,
    otherT: 0,
    beforeCompletion: { certain: 65, possible: 65 },
    fromFailing: { certain: 10, possible: 10 },
    neverIssued: { certain: 0, possible: 0 },
    severalLots: 0,
  }
  it('says of which lots it counts, and that some bills may be of others', () => {
    expect(plainSpaces(saidText(shippedWords(counts, 'SI')))).toBe(
      '2212 t of 29 800 t in lots with a certificate in force, lots sampled in the last 12 months; 65 bills left before the last result of their lot; 10 bills from lots that do not meet or are withdrawn',
    )
    const perhaps = {
      ...counts,
      beforeCompletion: { certain: 67, possible: 68 },
      fromFailing: { certain: 0, possible: 1 },
    }
    expect(saidText(shippedWords(perhaps, 'SI'))).toMatch(
      /; 67, perhaps 68 bills left before the last result of their lot; 0, perhaps 1 bill from lots that do not meet or are withdrawn$/,
    )
  })

  it('keeps what left of lots withdrawn or without a certificate apart from the share', () => {
    expect(plainSpaces(saidText(shippedWords({ ...counts, otherT: 123 }, 'SI')))).toMatch(
      /^2212 t of 29 800 t in lots .*12 months; 123 t more from lots withdrawn or without a certificate; 65 bills/,
    )
    expect(plainSpaces(saidText(shippedRest({ ...counts, otherT: 123 }, counts, null, 'SI')))).toMatch(
      /in force; 123 t more from lots withdrawn or without a certificate; 10 bills from lots that/,
    )
  })

  it('counts what left without any certificate', () => {
    expect(saidText(shippedWords({ ...counts, neverIssued: { certain: 2, possible: 2 } }, 'SI'))).toMatch(
      /; 2 bills from lots without a certificate$/,
    )
    expect(saidText(shippedWords(counts, 'SI'))).not.toContain('without a certificate')
  })

  it('sets the whole record and the balance beside it', () => {
    const all = { ...counts, shippedT: 9000, fromFailing: { certain: 1, possible: 1 }, failedT: 4050 }
    const balance = { months: 11, differenceT: -120, producedT: 3100 }
    expect(plainSpaces(saidText(shippedRest(all, { ...counts, severalLots: 2 }, balance, 'SI')))).toBe(
      'Whole record: 9000 t of 29 800 t in lots with a certificate in force (4050 t of them do not meet), 1 bill from lots that do not meet or are withdrawn. 2 bills cannot be resolved to one lot. Material balance of 11 months: difference −120 t of 3100 t produced.',
    )
    expect(saidText(shippedRest(all, counts, null, 'SI'))).not.toContain('balance')
  })

  it('says that no month of a balance tells', () => {
    expect(balanceWords({ months: 0, differenceT: 0, producedT: 0 }, 'SI')).toBe(
      'Material balance: no month has its stock at both ends.',
    )
  })
})

describe('gapsWords', () => {
  it('names the first gaps, a single number once, and counts the rest', () => {
    const gaps = [
      { first: 'A-04', last: 'A-04' },
      { first: 'A-10', last: 'A-12' },
      { first: 'A-20', last: 'A-20' },
    ]
    expect(gapsWords(gaps, 3)).toBe('Gaps: A-04, A-10 to A-12, A-20.')
    expect(gapsWords(gaps, 2)).toBe('Gaps: A-04, A-10 to A-12, 1 more.')
  })
})

describe('unshownWords', () => {
  it('says what is not counted, and nothing where all lots are shown', () => {
    expect(saidText(unshownWords({ lots: 1, balance: true }))).toBe(
      'The bills and masses of 1 lot on record and not shown are not counted, so no difference of the material balance is given. ',
    )
    expect(saidText(unshownWords({ lots: 2, balance: false }))).toBe(
      'The bills and masses of 2 lots on record and not shown are not counted. ',
    )
    expect(unshownWords({ lots: 0, balance: true })).toEqual([])
  })
})

describe('unusedWords', () => {
  it('says why a number was not used, and when where that is known', () => {
    const on = readMoment('2025-07-14')
    expect(plainSpaces(unusedWords({ number: 'TG-6', on, reason: 'form spoiled' }))).toBe(
      'TG-6, given up on 14 Jul 2025: form spoiled',
    )
    expect(unusedWords({ number: 'TG-6', reason: 'form spoiled' })).toBe('TG-6: form spoiled')
  })
})
