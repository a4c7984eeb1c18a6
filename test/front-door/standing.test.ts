/** When a clause is judged, which result it is judged on, and what lets a value over its limit. */
import { judgeThroughTheFrontDoor } from './front-door.ts'

const lime =
  'property: autoclave-expansion, magnitude-at-most: 0.80 %, when: [{ property: MgO, above: 5.0 % }]'
const air = 'property: air-content, at-most: 6.0 %, when: [{ fact: air-entrained, is: [yes] }]'
judgeThroughTheFrontDoor('a clause that applies on conditions', [
  {
    title: 'MgO of 5.1 lies above 5.0, and 0.80 is the very limit',
    clause: lime,
    lots: ['MgO: 5.1 %, autoclave-expansion: 0.80 %'],
    outcome: 'meets',
  },
  {
    title: 'MgO of 5.1 lies above 5.0, and 0.81 is over',
    clause: lime,
    lots: ['MgO: 5.1 %, autoclave-expansion: 0.81 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'MgO of 5.0 does not lie above 5.0',
    clause: lime,
    lots: ['MgO: 5.0 %, autoclave-expansion: 0.81 %'],
    outcome: 'not-applicable',
  },
  {
    title: 'without MgO nobody knows whether it applies',
    clause: lime,
    lots: ['autoclave-expansion: 0.81 %'],
    outcome: 'not-reported',
  },
  { title: 'it applies and has no result', clause: lime, lots: ['MgO: 5.1 %'], outcome: 'not-reported' },
  {
    title: 'the fact holds for the source',
    clause: air,
    source: 'facts: { air-entrained: "yes" }',
    lots: ['air-content: 6.1 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'the fact does not hold for the source',
    clause: air,
    source: 'facts: { air-entrained: "no" }',
    lots: ['air-content: 6.1 %'],
    outcome: 'not-applicable',
  },
  {
    title: 'the lot’s own fact goes before the source’s',
    clause: air,
    source: 'facts: { air-entrained: "no" }',
    lots: [{ analyses: 'air-content: 6.1 %', more: 'facts: { air-entrained: "yes" }' }],
    outcome: 'does-not-meet',
  },
  { title: 'nobody stated the fact', clause: air, lots: ['air-content: 6.1 %'], outcome: 'not-reported' },
])

const optional = 'property: SO3, at-most: 5.0 %, optional: yes'
const information = 'property: SO3, at-most: 5.0 %, information: yes'
judgeThroughTheFrontDoor('an optional clause, and one for information', [
  { title: 'optional and not asked for', clause: optional, lots: ['SO3: 6.0 %'], outcome: 'not-invoked' },
  {
    title: 'optional, asked for, on the very limit',
    clause: optional,
    requested: true,
    lots: ['SO3: 5.0 %'],
    outcome: 'meets',
  },
  {
    title: 'optional, asked for, over the limit',
    clause: optional,
    requested: true,
    lots: ['SO3: 5.1 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'optional, asked for, without a result',
    clause: optional,
    requested: true,
    outcome: 'not-reported',
  },
  {
    title: 'for information and over the limit: no part of the verdict',
    clause: information,
    lots: ['SO3: 5.1 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'for information and on the limit: no part of the verdict',
    clause: information,
    lots: ['SO3: 5.0 %'],
    outcome: 'meets',
  },
])

const outer = 'property: loss-on-ignition, at-most: 6.0 %, approval: { at-most: 12.0 %, evidence: records }'
const approval = 'from: 2026-01-01, by: Office, scope: loss'
judgeThroughTheFrontDoor('an outer limit by approval', [
  { title: '6.0 needs no approval', clause: outer, lots: ['loss-on-ignition: 6.0 %'], outcome: 'meets' },
  {
    title: '6.1 without an approval',
    clause: outer,
    lots: ['loss-on-ignition: 6.1 %'],
    outcome: 'does-not-meet',
  },
  {
    title: '6.1 with an approval',
    clause: outer,
    approval,
    lots: ['loss-on-ignition: 6.1 %'],
    outcome: 'meets-by-approval',
  },
  {
    title: '12.0 is the outer limit itself',
    clause: outer,
    approval,
    lots: ['loss-on-ignition: 12.0 %'],
    outcome: 'meets-by-approval',
  },
  {
    title: '12.1 lies over the outer limit',
    clause: outer,
    approval,
    lots: ['loss-on-ignition: 12.1 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'the approval ends on the day of the verdict',
    clause: outer,
    approval: `${approval}, to: 2026-03-10`,
    lots: ['loss-on-ignition: 9.0 %'],
    outcome: 'meets-by-approval',
  },
  {
    title: 'the approval ended the day before',
    clause: outer,
    approval: `${approval}, to: 2026-03-09`,
    lots: ['loss-on-ignition: 9.0 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'an approval of the source as a whole covers no clause',
    clause: outer,
    source: `approvals: [{ ${approval} }]`,
    lots: ['loss-on-ignition: 9.0 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'the outer limit is for class N, the lot is F',
    clause: outer.replace('evidence', 'classes: [N], evidence'),
    approval,
    set: 'classes: [N, F]',
    source: 'class: F',
    lots: ['loss-on-ignition: 9.0 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'the outer limit is for class N, the lot is N',
    clause: outer.replace('evidence', 'classes: [N], evidence'),
    approval,
    set: 'classes: [N, F]',
    source: 'class: N',
    lots: ['loss-on-ignition: 9.0 %'],
    outcome: 'meets-by-approval',
  },
  { title: 'no result, whatever is approved', clause: outer, approval, outcome: 'not-reported' },
])

const declaration =
  'property: chloride, at-most: 0.10 %, approval: { at-most: 0.30 %, evidence: in writing, by: declaration }'
const says = (value: string) => ({ source: `declared: { chloride: ${value} }` })
judgeThroughTheFrontDoor('an outer limit by declaration', [
  {
    title: '0.20 found, 0.20 declared',
    clause: declaration,
    ...says('0.20 %'),
    lots: ['chloride: 0.20 %'],
    outcome: 'meets-by-approval',
  },
  {
    title: '0.30 found, 0.30 declared, the outer limit itself',
    clause: declaration,
    ...says('0.30 %'),
    lots: ['chloride: 0.30 %'],
    outcome: 'meets-by-approval',
  },
  {
    title: '0.21 found, 0.20 declared',
    clause: declaration,
    ...says('0.20 %'),
    lots: ['chloride: 0.21 %'],
    outcome: 'does-not-meet',
  },
  {
    title: '0.25 found, and the 0.40 declared lie over the outer limit',
    clause: declaration,
    ...says('0.40 %'),
    lots: ['chloride: 0.25 %'],
    outcome: 'does-not-meet',
  },
  {
    title: '0.15 found, nothing declared',
    clause: declaration,
    lots: ['chloride: 0.15 %'],
    outcome: 'does-not-meet',
  },
  {
    title: '0.10 found needs no declaration',
    clause: declaration,
    lots: ['chloride: 0.10 %'],
    outcome: 'meets',
  },
])

const deemed = 'property: chloride, at-most: 0.10 %, deemed-by: [{ fact: fuel, is: [coal-only] }]'
const deemedByLime =
  'property: autoclave-expansion, at-most: 0.80 %, deemed-by: [{ property: CaO, at-most: 10.0 % }]'
const coal = { source: 'facts: { fuel: coal-only }' }
judgeThroughTheFrontDoor('a clause deemed to be met', [
  { title: 'no result, and the fact holds', clause: deemed, ...coal, outcome: 'meets' },
  {
    title: 'no result, and the fact does not hold',
    clause: deemed,
    source: 'facts: { fuel: co-fired }',
    outcome: 'not-reported',
  },
  { title: 'no result, and nobody stated the fact', clause: deemed, outcome: 'not-reported' },
  {
    title: 'a result is judged whatever the fact says',
    clause: deemed,
    ...coal,
    lots: ['chloride: 0.11 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'no result, and CaO of 10.0 is at most 10.0',
    clause: deemedByLime,
    lots: ['CaO: 10.0 %'],
    outcome: 'meets',
  },
  {
    title: 'no result, and CaO of 10.1 is more',
    clause: deemedByLime,
    lots: ['CaO: 10.1 %'],
    outcome: 'not-reported',
  },
  {
    title: 'no result, and of two analyses one finds CaO of 12.0: a lenient one is not enough',
    clause: deemedByLime,
    lots: [{ analyses: [{ results: 'CaO: 9.0 %' }, { results: 'CaO: 12.0 %', laboratory: 'dock' }] }],
    outcome: 'not-reported',
  },
  {
    title: 'no result, and both analyses find no more than 10.0',
    clause: deemedByLime,
    lots: [{ analyses: [{ results: 'CaO: 9.0 %' }, { results: 'CaO: 10.0 %', laboratory: 'dock' }] }],
    outcome: 'meets',
  },
])

const required = 'property: residue-45um, at-most: 40 %, method: EN 451-2, method-required: yes'
const by = (method: string, value = '40 %') => [`residue-45um: { value: ${value}, method: ${method} }`]
judgeThroughTheFrontDoor('a method', [
  {
    title: 'a result by the method, on the very limit',
    clause: required,
    lots: by('EN 451-2'),
    outcome: 'meets',
  },
  { title: 'a result by an edition of it', clause: required, lots: by('EN 451-2-2017'), outcome: 'meets' },
  {
    title: 'a result by it, over the limit',
    clause: required,
    lots: by('EN 451-2', '41 %'),
    outcome: 'does-not-meet',
  },
  { title: 'a result by another', clause: required, lots: by('EN 933-10'), outcome: 'not-reported' },
  {
    title: 'a result without a method',
    clause: required,
    lots: ['residue-45um: 40 %'],
    outcome: 'not-reported',
  },
  {
    title: 'the method is named and not required',
    clause: required.replace(', method-required: yes', ''),
    lots: by('EN 933-10'),
    outcome: 'meets',
  },
])

const several = (which: string) => `property: SO3, at-most: 5.0 %, several: ${which}`
const two = (first: number, second: number) => [
  {
    analyses: [
      { results: `SO3: ${first.toFixed(1)} %`, tested: '2026-03-03' },
      { results: `SO3: ${second.toFixed(1)} %`, tested: '2026-03-04' },
    ],
  },
]
judgeThroughTheFrontDoor('several results', [
  { title: 'the worst of 6.0 and 4.0', clause: several('worst'), lots: two(6, 4), outcome: 'does-not-meet' },
  { title: 'the worst of 4.0 and 5.0', clause: several('worst'), lots: two(4, 5), outcome: 'meets' },
  {
    title: 'the worst is taken where nothing is said',
    clause: 'property: SO3, at-most: 5.0 %',
    lots: two(6, 4),
    outcome: 'does-not-meet',
  },
  {
    title: 'the mean of 6.0 and 4.0 is the very limit',
    clause: several('mean'),
    lots: two(6, 4),
    outcome: 'meets',
  },
  {
    title: 'the mean of 6.2 and 4.0 is 5.1',
    clause: several('mean'),
    lots: two(6.2, 4),
    outcome: 'does-not-meet',
  },
  { title: 'the latest of 6.0 and 4.0', clause: several('latest'), lots: two(6, 4), outcome: 'meets' },
  {
    title: 'the latest of 4.0 and 6.0',
    clause: several('latest'),
    lots: two(4, 6),
    outcome: 'does-not-meet',
  },
  {
    title: 'a composite of 4.0 goes before a grab of 6.0',
    clause: several('worst'),
    lots: [{ analyses: [{ results: 'SO3: 6.0 %', sample: 'G' }, { results: 'SO3: 4.0 %' }] }],
    outcome: 'meets',
  },
  {
    title: 'a grab of 6.0 is judged where there is no composite',
    clause: several('worst'),
    lots: [{ analyses: [{ results: 'SO3: 6.0 %', sample: 'G' }] }],
    outcome: 'does-not-meet',
  },
  {
    title: 'an excluded 6.0 is passed over beside a valid 4.0',
    clause: several('worst'),
    lots: [{ analyses: [{ results: 'SO3: { value: 6.0 %, excluded: spilt }' }, { results: 'SO3: 4.0 %' }] }],
    outcome: 'meets',
  },
])

const bands =
  'property: r3-heat, band: [{ title: low, below: 160 J/g }, { title: high, at-least: 160 J/g, and: [{ property: lime-consumption, above: 50 % }] }]'
judgeThroughTheFrontDoor('bands', [
  { title: '159 J/g lies in the first', clause: bands, lots: ['r3-heat: 159 J/g'], outcome: 'reported' },
  {
    title: '160 J/g lies in the second with 51 % of lime',
    clause: bands,
    lots: ['r3-heat: 160 J/g, lime-consumption: 51 %'],
    outcome: 'reported',
  },
  {
    title: '160 J/g lies in none with 50 % of lime, and nothing is asked of it',
    clause: bands,
    lots: ['r3-heat: 160 J/g, lime-consumption: 50 %'],
    outcome: 'reported',
  },
  {
    title: '160 J/g cannot be classified without the lime',
    clause: bands,
    lots: ['r3-heat: 160 J/g'],
    outcome: 'not-reported',
  },
  { title: 'no result', clause: bands, outcome: 'not-reported' },
])
