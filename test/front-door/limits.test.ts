/** A value against a limit: every operator, at the very limit, by class, in other units, rounded. */
import { judgeThroughTheFrontDoor, type Row } from './front-door.ts'

/** A clause on one property against one result of it, or against none. */
function on(
  clause: string,
  cases: readonly (readonly [string | null, string, Row['outcome']])[],
  more: Partial<Row> = {},
): Row[] {
  return cases.map(([results, why, outcome]) => ({
    title: `${clause}; ${results ?? 'no result'}: ${why}`,
    clause,
    lots: [results ?? {}],
    outcome,
    ...more,
  }))
}

judgeThroughTheFrontDoor('an operator', [
  ...on('property: SO3, at-most: 5.0 %', [
    ['SO3: 4.9 %', 'below the limit', 'meets'],
    ['SO3: 5.0 %', 'the very limit, which is inclusive', 'meets'],
    ['SO3: 5.04 %', 'rounded to the limit’s decimals it is 5.0', 'meets'],
    ['SO3: 5.05 %', 'half is rounded to the even digit, 5.0', 'meets'],
    ['SO3: 5.06 %', 'rounded it is 5.1', 'does-not-meet'],
    ['SO3: < 0.1 %', 'whatever lies below 0.1 lies below 5.0', 'meets'],
    ['SO3: < 6.0 %', 'what lies below 6.0 may lie on either side', 'not-reported'],
    ['SO3: { value: 4.0 %, excluded: spilt }', 'the only result does not count', 'not-valid'],
    [null, 'nothing is judged', 'not-reported'],
  ]),
  ...on('property: SO3, at-least: 5.0 %', [
    ['SO3: 5.1 %', 'above the limit', 'meets'],
    ['SO3: 5.0 %', 'the very limit, which is inclusive', 'meets'],
    ['SO3: 4.95 %', 'half is rounded to the even digit, 5.0', 'meets'],
    ['SO3: 4.94 %', 'rounded it is 4.9', 'does-not-meet'],
    ['SO3: < 5.0 %', 'whatever lies below 5.0 is not at least 5.0', 'does-not-meet'],
    ['SO3: < 5.1 %', 'what lies below 5.1 may lie on either side', 'not-reported'],
    [null, 'nothing is judged', 'not-reported'],
  ]),
  ...on('property: CaO, above: 18.0 %', [
    ['CaO: 18.1 %', 'above the limit', 'meets'],
    ['CaO: 18.0 %', 'the very limit, which is strict', 'does-not-meet'],
    ['CaO: 18.04 %', 'rounded it is the limit itself', 'does-not-meet'],
    [null, 'nothing is judged', 'not-reported'],
  ]),
  ...on('property: CaO, below: 18.0 %', [
    ['CaO: 17.9 %', 'below the limit', 'meets'],
    ['CaO: 18.0 %', 'the very limit, which is strict', 'does-not-meet'],
    ['CaO: 17.96 %', 'rounded it is the limit itself', 'does-not-meet'],
    ['CaO: < 18.0 %', 'whatever lies below 18.0 lies below 18.0', 'meets'],
    [null, 'nothing is judged', 'not-reported'],
  ]),
  ...on('property: SO3, between: [2.0 %, 7.0 %]', [
    ['SO3: 2.0 %', 'the lower end, inclusive', 'meets'],
    ['SO3: 7.0 %', 'the upper end, inclusive', 'meets'],
    ['SO3: 1.9 %', 'below the lower end', 'does-not-meet'],
    ['SO3: 7.1 %', 'above the upper end', 'does-not-meet'],
    ['SO3: < 2.0 %', 'all that it may be is below the lower end', 'does-not-meet'],
    ['SO3: < 3.0 %', 'it may lie inside or below', 'not-reported'],
    [null, 'nothing is judged', 'not-reported'],
  ]),
  ...on('property: autoclave-expansion, magnitude-at-most: 0.80 %', [
    ['autoclave-expansion: 0.80 %', 'the very limit, expanding', 'meets'],
    ['autoclave-expansion: -0.80 %', 'the very limit, contracting', 'meets'],
    ['autoclave-expansion: 0.81 %', 'expands too far', 'does-not-meet'],
    ['autoclave-expansion: -0.81 %', 'contracts too far', 'does-not-meet'],
    [null, 'nothing is judged', 'not-reported'],
  ]),
  ...on('property: SO3, report: yes', [
    ['SO3: 5.0 %', 'a report is all that is asked for', 'reported'],
    [null, 'the report is missing', 'not-reported'],
  ]),
  ...on('property: SO3, at-least: 2.0 %, at-most: 5.0 %', [
    ['SO3: 2.0 %', 'both limits hold', 'meets'],
    ['SO3: 5.1 %', 'one of the two is broken', 'does-not-meet'],
  ]),
])

judgeThroughTheFrontDoor('a limit in other words', [
  ...on('property: density, at-least: 2000 kg/m3', [
    ['density: 2.00 g/cm3', 'the very limit in another unit', 'meets'],
    ['density: 1.99 g/cm3', '1990 kg/m3', 'does-not-meet'],
  ]),
  ...on('property: passing-45um, at-least: 75 %', [
    ['residue-45um: 25 %', 'what is not retained has passed: 75', 'meets'],
    ['residue-45um: 26 %', 'only 74 have passed', 'does-not-meet'],
  ]),
  ...on('property: oxide-sum, at-least: 70.0 %', [
    ['SiO2: 45.0 %, Al2O3: 20.0 %, Fe2O3: 5.0 %', 'the sum is 70.0', 'meets'],
    ['SiO2: 45.0 %, Al2O3: 20.0 %, Fe2O3: 4.9 %', 'the sum is 69.9', 'does-not-meet'],
    ['SiO2: 65.0 %, Al2O3: 20.0 %', 'there is no sum without iron', 'not-reported'],
  ]),
  ...on('property: CaO, at-most: 18.0 %, resolution: 0.5', [
    ['CaO: 18.2 %', 'in steps of 0.5 it is 18.0', 'meets'],
    ['CaO: 18.3 %', 'in steps of 0.5 it is 18.5', 'does-not-meet'],
  ]),
  ...on('property: CaO, at-most: 18.0 %, resolution: none', [
    ['CaO: 18.0 %', 'the very limit', 'meets'],
    ['CaO: 18.01 %', 'nothing is rounded', 'does-not-meet'],
  ]),
  ...on('property: SO3, at-most: 5.0 %, kinds: [slag]', [
    ['SO3: 9.0 %', 'the clause is for another kind of material', 'not-applicable'],
  ]),
])

const byClass = 'property: loss-on-ignition, at-most: { N: 10.0 %, F: 6.0 % }'
const classes = 'classes: [N, F, C]'
judgeThroughTheFrontDoor('a limit by class', [
  ...on(
    byClass,
    [
      ['loss-on-ignition: 10.0 %', 'the very limit of class N', 'meets'],
      ['loss-on-ignition: 10.1 %', 'over the limit of class N', 'does-not-meet'],
    ],
    { set: classes, source: 'class: N' },
  ),
  ...on(
    byClass,
    [
      ['loss-on-ignition: 6.0 %', 'the very limit of class F', 'meets'],
      ['loss-on-ignition: 6.1 %', 'over the limit of class F', 'does-not-meet'],
    ],
    { set: classes, source: 'class: F' },
  ),
  ...on(byClass, [['loss-on-ignition: 20.0 %', 'class C has no limit', 'not-applicable']], {
    set: classes,
    source: 'class: C',
  }),
  ...on(
    'property: SO3, at-most: 5.0 %, classes: [N]',
    [['SO3: 5.1 %', 'the clause is for the claimed class', 'does-not-meet']],
    { set: classes, source: 'class: N' },
  ),
  ...on(
    'property: SO3, at-most: 5.0 %, classes: [N]',
    [['SO3: 5.1 %', 'the clause is for another class', 'not-applicable']],
    { set: classes, source: 'class: F' },
  ),
])
