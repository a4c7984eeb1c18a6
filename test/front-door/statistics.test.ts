/** Clauses on several results of a source, and on its declared value. */
import { judgeThroughTheFrontDoor, type Row } from './front-door.ts'

/** Lots ten days apart, each with one result of SO3 in per cent. */
const sulfates = (...values: readonly number[]) => values.map((value) => `SO3: ${value.toFixed(1)} %`)
/** The same with silica. */
const silicas = (...values: readonly number[]) => values.map((value) => `SiO2: ${value.toFixed(1)} %`)

const mean = 'property: SiO2, at-least: 50.0 %, statistic: { rolling-mean: 3 }'
judgeThroughTheFrontDoor('a rolling mean', [
  {
    title: '49, 50, 51 have the mean 50.0, the very limit',
    clause: mean,
    lots: silicas(49, 50, 51),
    outcome: 'meets',
  },
  {
    title: '49, 50, 50.8 have the mean 49.93',
    clause: mean,
    lots: silicas(49, 50, 50.8),
    outcome: 'does-not-meet',
  },
  {
    title: 'of 10, 49, 50, 51 only the last three count',
    clause: mean,
    lots: silicas(10, 49, 50, 51),
    outcome: 'meets',
  },
  { title: 'two results of the three', clause: mean, lots: silicas(60, 60), outcome: 'insufficient-history' },
])

const variables = (limit: string, period = '365 d') =>
  `property: SiO2, ${limit}, statistic: { variables: { period: ${period}, at-least: 3, share: 90 %, confidence: 95 % } }`
// One-sided tolerance factor for three results, 90 % and 95 %: 6.155 (tolerance-factor.test.ts).
// 79, 80, 81: mean 80, standard deviation 1, estimates 73.845 and 86.155.
judgeThroughTheFrontDoor('conformity by variables', [
  {
    title: '80 - 6.155 = 73.845 conforms to at least 73.8',
    clause: variables('at-least: 73.8 %'),
    lots: silicas(79, 80, 81),
    outcome: 'meets',
  },
  {
    title: '73.845 does not conform to at least 73.9, unrounded',
    clause: variables('at-least: 73.9 %'),
    lots: silicas(79, 80, 81),
    outcome: 'does-not-meet',
  },
  {
    title: '80 + 6.155 = 86.155 conforms to at most 86.2',
    clause: variables('at-most: 86.2 %'),
    lots: silicas(79, 80, 81),
    outcome: 'meets',
  },
  {
    title: '86.155 does not conform to at most 86.1, unrounded',
    clause: variables('at-most: 86.1 %'),
    lots: silicas(79, 80, 81),
    outcome: 'does-not-meet',
  },
  {
    title: 'both estimates lie between 73.8 and 86.2',
    clause: variables('between: [73.8 %, 86.2 %]'),
    lots: silicas(79, 80, 81),
    outcome: 'meets',
  },
  {
    title: 'the upper estimate lies beyond 86.1',
    clause: variables('between: [73.8 %, 86.1 %]'),
    lots: silicas(79, 80, 81),
    outcome: 'does-not-meet',
  },
  {
    title: 'equal results on the very limit have no scatter',
    clause: variables('at-least: 80 %'),
    lots: silicas(80, 80, 80),
    outcome: 'meets',
  },
  {
    title: 'two results of the three',
    clause: variables('at-least: 10 %'),
    lots: silicas(80, 80),
    outcome: 'insufficient-history',
  },
  {
    title: 'a result twenty days before the lot lies in a period of 20 d',
    clause: variables('at-least: 80 %', '20 d'),
    lots: silicas(80, 80, 80),
    outcome: 'meets',
  },
  {
    title: 'a result twenty days before the lot lies outside a period of 19 d',
    clause: variables('at-least: 80 %', '19 d'),
    lots: silicas(80, 80, 80),
    outcome: 'insufficient-history',
  },
])

const attributes = (more = '', period = '365 d') =>
  `property: SO3, at-most: 3.0 %, statistic: { attributes: { period: ${period}, acceptance: [{ from: 2, allow: 0 }, { from: 4, allow: 1 }]${more} } }`
const beyond = ', beyond: { factor: 0.5, less: 2 }'
judgeThroughTheFrontDoor('conformity by attributes', [
  {
    title: 'two results on the very limit, none beyond',
    clause: attributes(),
    lots: sulfates(3, 3),
    outcome: 'meets',
  },
  {
    title: 'one of two beyond, none allowed',
    clause: attributes(),
    lots: sulfates(3.1, 3),
    outcome: 'does-not-meet',
  },
  {
    title: 'one of three beyond, none allowed below four',
    clause: attributes(),
    lots: sulfates(3.1, 3, 3),
    outcome: 'does-not-meet',
  },
  {
    title: 'one of four beyond, one allowed',
    clause: attributes(),
    lots: sulfates(3.1, 3, 3, 3),
    outcome: 'meets',
  },
  {
    title: 'two of four beyond, one allowed',
    clause: attributes(),
    lots: sulfates(3.1, 3, 3, 3.1),
    outcome: 'does-not-meet',
  },
  {
    title: 'one result of the two that the plan begins with',
    clause: attributes(),
    lots: sulfates(3),
    outcome: 'insufficient-history',
  },
  {
    title: 'of six results 0.5 (6 - 2) = 2 may lie beyond',
    clause: attributes(beyond),
    lots: sulfates(9, 9, 3, 3, 3, 3),
    outcome: 'meets',
  },
  {
    title: 'three of six lie beyond',
    clause: attributes(beyond),
    lots: sulfates(9, 9, 9, 3, 3, 3),
    outcome: 'does-not-meet',
  },
  {
    title: 'two beyond, 30 d and 40 d ago, lie outside a period of 29 d',
    clause: attributes('', '29 d'),
    lots: sulfates(9, 9, 3, 3, 3),
    outcome: 'meets',
  },
  {
    title: 'two beyond, 30 d and 40 d ago, lie in a period of 40 d',
    clause: attributes('', '40 d'),
    lots: sulfates(9, 9, 3, 3, 3),
    outcome: 'does-not-meet',
  },
])

const tolerance = (limit: string) =>
  `property: SiO2, ${limit}, statistic: { tolerance: { results: 10, at-least: 3, share: 90 % } }`
// 29, 30, 31: mean 30, standard deviation 1. Normal shares within 2 and 1.5 standard deviations: 95.45 %, 86.64 %.
const shares: Pick<Row, 'lots'> = { lots: silicas(29, 30, 31) }
const declared = { source: 'declared: { SiO2: 30 % }' }
judgeThroughTheFrontDoor('a share of results within limits', [
  {
    title: '95.4 % lie between 28 and 32',
    clause: tolerance('between: [28 %, 32 %]'),
    ...shares,
    outcome: 'meets',
  },
  {
    title: '86.6 % lie between 28.5 and 31.5',
    clause: tolerance('between: [28.5 %, 31.5 %]'),
    ...shares,
    outcome: 'does-not-meet',
  },
  {
    title: '95.4 % lie within 2 points of 30 declared',
    clause: tolerance('deviation-from: { declared: yes }, magnitude-at-most: 2 percentage points'),
    ...shares,
    ...declared,
    outcome: 'meets',
  },
  {
    title: '86.6 % lie within 1.5 points of 30 declared',
    clause: tolerance('deviation-from: { declared: yes }, magnitude-at-most: 1.5 percentage points'),
    ...shares,
    ...declared,
    outcome: 'does-not-meet',
  },
  {
    title: 'nothing is declared',
    clause: tolerance('deviation-from: { declared: yes }, magnitude-at-most: 2 percentage points'),
    ...shares,
    outcome: 'not-reported',
  },
  {
    title: 'equal results on the very limit all lie within it',
    clause: tolerance('between: [30 %, 32 %]'),
    lots: silicas(30, 30, 30),
    outcome: 'meets',
  },
  {
    title: 'two results of the three',
    clause: tolerance('between: [28 %, 32 %]'),
    lots: silicas(30, 30),
    outcome: 'insufficient-history',
  },
])

const ownValue = 'property: residue-45um, at-most: 40 %, statistic: { declared: yes }'
const variability = 'property: SiO2, statistic: { variability: { results: 10 } }'
judgeThroughTheFrontDoor('a declared value, and a variability', [
  {
    title: '40 declared is the very limit, whatever was found',
    clause: ownValue,
    source: 'declared: { residue-45um: 40 % }',
    lots: ['residue-45um: 50 %'],
    outcome: 'meets',
  },
  {
    title: '41 declared',
    clause: ownValue,
    source: 'declared: { residue-45um: 41 % }',
    lots: ['residue-45um: 20 %'],
    outcome: 'does-not-meet',
  },
  { title: 'nothing is declared', clause: ownValue, lots: ['residue-45um: 20 %'], outcome: 'not-reported' },
  { title: 'a variability has no limit', clause: variability, lots: silicas(40, 60), outcome: 'reported' },
  {
    title: 'one result has no variability',
    clause: variability,
    lots: silicas(40),
    outcome: 'insufficient-history',
  },
])
