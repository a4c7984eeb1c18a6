import { describe, expect, it } from 'vitest'
import { printedCondition, printedMortars } from '../../../src/edition/printed/mortars.ts'
import { certificate, index, mortar, result } from '../certificate-fixture.ts'

describe('printedMortars', () => {
  it('says in one line how mortar and control were made', () => {
    const own = mortar({
      control: {
        ...(mortar().control ?? { id: 'K1', cast: '2026-03-10' }),
        cementType: 'I',
        cementAlkalis: '0.62 %',
      },
    })
    expect(printedMortars(certificate({ mortars: [own] })).mortars).toEqual([
      {
        condition: 'warm',
        line: [
          'cast 10\u00a0Mar\u00a02026',
          'flow 108\u00a0% (control 104\u00a0%)',
          'constant w/cm 0.485',
          'control batch K1 cast 10\u00a0Mar\u00a02026 with cement lot PC-1 (I), alkalis 0.62\u00a0% as Na₂O',
        ].join('; '),
      },
    ])
  })
  it('gives both waters where either is recorded, and says what is not', () => {
    const own = mortar({ flow: undefined as never, water: '242 g' })
    const [view] = printedMortars(certificate({ mortars: [own] })).mortars
    expect(view?.line).toContain(
      'flow not recorded (control 104\u00a0%); water 242\u00a0g (control not recorded)',
    )
  })
  it('says of a mass that the condition states for the control that it is of mixing water', () => {
    const own = mortar({ control: undefined as never })
    const [warm] = certificate().conditions
    const text = 'flow within 5 percentage points of the control’s, control 242 g'
    const conditions = [{ ...warm, particulars: [{ label: 'Water', text }] }] as never
    const [view] = printedMortars(certificate({ mortars: [own], conditions })).mortars
    expect(view?.line.replaceAll('\u00a0', ' ')).toContain(
      `; mixing water: ${text}; no control batch on record`,
    )
  })
  it('says no more of a condition that is not on record', () => {
    const [view] = printedMortars(certificate({ mortars: [mortar({ condition: 'gone' })] })).mortars
    expect(view?.condition).toBe('gone')
    expect(view?.line.startsWith('cast 10')).toBe(true)
  })
  it('says of finished figures that they are such, and nothing where no index is reported', () => {
    const note = (more: Parameters<typeof certificate>[0]) =>
      printedMortars(certificate({ mortars: [], ...more })).note
    const finished = [index({ finished: true })]
    expect(note({ results: finished })).toMatch(/^The laboratory reported finished figures; /)
    expect([note({ results: [result()] }), note({ results: finished, mortars: [mortar()] })]).toEqual([
      undefined,
      undefined,
    ])
  })
  it('lists deviations, then the specimens left out', () => {
    const readings = [
      {
        of: 'test' as const,
        what: 'strength' as const,
        age: '7 d',
        tested: '2026-03-17',
        specimens: [
          { mark: 'a', reading: '60 kN' },
          { mark: 'f', reading: '41 kN', excluded: 'corner lost' },
        ],
      },
    ]
    const document = certificate({
      deviations: ['cast again on 2026-03-10'],
      mortars: [mortar({ readings })],
    })
    expect(printedMortars(document).departures).toEqual([
      'Cast again on 2026-03-10',
      'Excluded test specimen f (strength, 7\u00a0d): corner lost',
    ])
  })
  it('is empty for a lot without mortar', () =>
    expect(printedMortars(certificate())).toEqual({ mortars: [], departures: [] }))
})

describe('printedCondition', () => {
  it('begins a line with replacement and curing', () => {
    const [warm] = certificate().conditions
    expect(warm && printedCondition(warm)).toMatchObject({
      title: '50\u00a0%, 50\u00a0°C',
      summary: '50\u00a0% of the cement replaced by mass; saturated lime water, 50\u00a0°C ± 2\u00a0°C',
    })
  })
})
