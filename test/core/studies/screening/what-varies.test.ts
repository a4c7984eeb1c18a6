import { describe, expect, it } from 'vitest'
import { readAge } from '../../../../src/core/measure/age.ts'
import type { BatchIndex, BatchMean } from '../../../../src/core/studies/batch-indices.ts'
import type { MaterialClass } from '../../../../src/core/studies/screening/material-means.ts'
import { type NewMaterial, predictedShare } from '../../../../src/core/studies/screening/new-material.ts'
import { whatVaries } from '../../../../src/core/studies/screening/what-varies.ts'
import { chanceError, normal, shareOf } from '../../simulation/chance.ts'

const age = readAge('28 d')
const CLASSES: Readonly<Record<string, MaterialClass>> = { I: 'inert', W: 'weak', R: 'reactive' }

/** { "I1 A": "70 72" }: indices by batch, a plus for one known only as above; controls shared unless `own`. */
function batches(
  all: Readonly<Record<string, string>>,
  controls: 'shared' | 'own' | 'finished' = 'shared',
): BatchIndex[] {
  return Object.entries(all).flatMap(([place, texts]) => {
    const [material = '', laboratory = '1'] = place.split(' ')
    return texts.split(' ').map((text, batch): BatchIndex => {
      const at = { condition: 'C', laboratory, batch: String(batch), age }
      const control: BatchMean = {
        ...at,
        batch: controls === 'own' ? `${material}${batch}` : String(batch),
        material: 'control',
        property: 'strength-activity-index',
        ...{ value: 40, above: false, n: 3 },
      }
      return {
        ...at,
        material,
        property: 'strength-activity-index',
        value: Number(text.replace('+', '')),
        above: text.endsWith('+'),
        test: null,
        control: controls === 'finished' ? null : control,
        sharesControl: false,
      }
    })
  })
}

const found = (indices: readonly BatchIndex[]) =>
  whatVaries(indices, {
    classes: new Map(indices.map(({ material }) => [material, CLASSES[material[0] ?? ''] ?? 'weak'])),
    batches: 2,
    level: 0.95,
  })

const BALANCED = {
  I1: '70 72 71',
  I2: '75 78 74',
  I3: '68 69 71',
  R1: '98 102 99',
  R2: '110 113 112',
  R3: '120 119 124',
  R4: '104 109 106',
}

describe('whatVaries', () => {
  const balanced = found(batches(BALANCED))
  const figure = (part: string, of = balanced) => of?.figures.find((one) => one.part === part)

  // numpy 2.4 and scipy 1.17: two-way mean squares on the logarithms written out, materials by class.
  it('gives the components of a balanced study in one laboratory as numpy has them', () => {
    expect(figure('material-inert')?.deviation).toBeCloseTo(0.044024827696149, 12)
    expect(figure('material-inert')?.df).toBeCloseTo(1.80968265331, 9)
    expect(figure('material-reactive')?.deviation).toBeCloseTo(0.081186949983658, 12)
    expect(figure('material-reactive')?.df).toBeCloseTo(2.911740599997, 9)
    expect(figure('control')?.deviation).toBeCloseTo(0.0119641696225534, 12)
    expect(figure('control')?.df).toBeCloseTo(1.1798965400758998, 9)
    expect(figure('batch')?.deviation).toBeCloseTo(0.017230890711776, 12)
    expect(figure('batch')?.df).toBe(12)
  })
  it('says what one laboratory cannot tell', () => {
    expect(figure('laboratory')).toMatchObject({ deviation: null, why: 'one-laboratory' })
    expect(figure('laboratory-material')).toMatchObject({ deviation: null, why: 'one-laboratory' })
  })
  it('foretells a new material as scipy does', () => {
    const [inert, reactive] = [balanced?.inert, balanced?.reactive] as [NewMaterial, NewMaterial]
    expect(inert.value).toBeCloseTo(71.939243946, 8)
    expect(inert.interval[0]).toBeCloseTo(58.4156113676, 6)
    expect(inert.interval[1]).toBeCloseTo(88.593694363, 6)
    expect(inert.df).toBeCloseTo(2.248958110243503, 9)
    expect(predictedShare(inert, 85, 'above')).toBeCloseTo(0.03872260420946815, 9)
    expect(reactive.interval[1]).toBeCloseTo(145.826239323, 6)
    expect(predictedShare(reactive, 85, 'below')).toBeCloseTo(0.03444428173484737, 9)
  })
  // One batch a material, in one laboratory, each with its own control: nothing repeats.
  it('gives nothing without a repeat', () => {
    expect(found(batches({ I1: '70', R1: '100' }))).toBeNull()
  })
  it('gives nothing where no material has two batches, though classes have several materials', () => {
    expect(found(batches({ I1: '70', I2: '80', I3: '75', R1: '100', R2: '130' }, 'finished'))).toBeNull()
  })
  // Means 70 and 80 of the logarithms' materials, no scatter within: V = s²(1 + 1/2), one degree of freedom.
  it('is the interval of one more mean where batches do not scatter, by hand', () => {
    const one = found(batches({ I1: '70 70', I2: '80 80', R1: '100 100' }, 'finished'))
    const inert = one?.inert as NewMaterial
    const s = Math.log(80 / 70) / Math.SQRT2
    expect(inert.logDeviation).toBeCloseTo(s * Math.sqrt(1.5), 12)
    expect(inert.df).toBeCloseTo(1, 12)
    expect(inert.value).toBeCloseTo(Math.sqrt(70 * 80), 9)
    expect(one?.reactive).toBe('one-material')
    expect(figure('material-reactive', one)).toMatchObject({ deviation: null, why: 'one-material' })
    expect(figure('control', one)).toBeUndefined()
  })
  it('counts the control with the batch where each batch has its own', () => {
    expect(figure('control', found(batches(BALANCED, 'own')))).toBeUndefined()
  })
  it('says that one control batch for all cannot be told from the laboratory', () => {
    const indices = batches(BALANCED).map((one) => ({
      ...one,
      control: one.control === null ? null : { ...one.control, batch: '0' },
    }))
    expect(figure('control', found(indices))).toMatchObject({ deviation: null, why: 'one-control' })
  })
  it('leaves a material above the ceiling out, and says nothing of a new one of its class', () => {
    const one = found(batches({ ...BALANCED, R4: '104 109+ 106' }))
    expect(one?.aboveCeiling).toEqual(['R4'])
    expect(one?.reactive).toBe('above-ceiling')
    expect(typeof one?.inert).toBe('object')
  })
  // Logarithms 0 and 2 in laboratory A and B for I1, 4 and 6 for I2: I 2 apart in both, so nothing is left for the interaction.
  it('parts laboratories from materials, and leaves laboratory × material to single batches', () => {
    const e = (log: number) => String(100 * Math.exp(log / 10))
    const one = found(
      batches(
        { 'I1 A': e(0), 'I1 B': e(2), 'I2 A': e(4), 'I2 B': e(6), 'I3 A': e(2), 'I3 B': e(5) },
        'finished',
      ),
    )
    expect(figure('laboratory-material', one)).toMatchObject({ deviation: null, why: 'one-batch' })
    // Means of materials 1, 5, 3.5; differences B − A 2, 2, 3: residual ½ Σ (d − d̄)²/2 = ½ · (2/3)/2 = 1/6.
    expect((figure('batch', one)?.deviation ?? 0) * 10).toBeCloseTo(Math.sqrt(1 / 6), 9)
    // Laboratories: 3 · (7/3)²/2 = 49/6 mean square; (49/6 − 1/6)/3 = 8/3.
    expect((figure('laboratory', one)?.deviation ?? 0) * 10).toBeCloseTo(Math.sqrt(8 / 3), 9)
    // Materials: mean square 2 · variance of 1, 5, 3.5, which is 49/12; (49/6 − 1/6)/2 = 4.
    expect((figure('material-inert', one)?.deviation ?? 0) * 10).toBeCloseTo(2, 9)
  })
  it('gives a component below zero as nought, and says so', () => {
    const one = found(batches({ I1: '70 80', I2: '71 79', R1: '100 110', R2: '100 111' }, 'finished'))
    expect(figure('material-inert', one)).toMatchObject({ deviation: 0, isNegative: true, df: null })
  })
  // Six materials of each class, three batches with shared controls; deviations of material, laboratory, cell, control and batch.
  it.each([
    [1, [0.03, 0, 0, 0.017, 0.02]],
    [3, [0.03, 0.03, 0.01, 0.01, 0.02]],
  ])(
    'holds a new material as often as stated, laboratories: %d',
    (laboratories, [material, own, cell, control, batch]) => {
      const next = normal(5)
      const scatter = (deviation = 0) => deviation * next()
      const study = () => {
        const levels = Array.from({ length: laboratories }, () => ({
          level: scatter(own),
          controls: [0, 1, 2].map(() => scatter(control)),
        }))
        const readings = ['I', 'R'].flatMap((known) =>
          [1, 2, 3, 4, 5, 6].flatMap((place) => {
            const mean = 4.3 + scatter(material) + (known === 'R' ? 0.4 : 0)
            return levels.map(({ level, controls }, laboratory) => {
              const here = mean + level + scatter(cell)
              const texts = controls.map((shared) => String(Math.exp(here + shared + scatter(batch))))
              return [`${known}${place} L${laboratory}`, texts.join(' ')]
            })
          }),
        )
        return found(batches(Object.fromEntries(readings) as Record<string, string>))?.inert as NewMaterial
      }
      // By the mean of the two batches asked for; in one laboratory its level counts for old and new alike, and is nought here.
      const fresh = () =>
        4.3 +
        scatter(material) +
        scatter(own) +
        scatter(cell) +
        (scatter(control) + scatter(batch) + scatter(control) + scatter(batch)) / 2
      const held = shareOf(1000, () => {
        const { interval } = study()
        const value = Math.exp(fresh())
        return interval[0] <= value && value <= interval[1]
      })
      expect(Math.abs(held - 0.95)).toBeLessThan(chanceError(0.95, 1000))
    },
  )
})
