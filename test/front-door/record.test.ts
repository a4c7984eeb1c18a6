/** Clauses on the record: facts, documents, allowed classes, sampling. */
import { judgeThroughTheFrontDoor } from './front-door.ts'

const fact = 'fact: flue-gas-treatment, is: [none, dry-lime]'
judgeThroughTheFrontDoor('a fact', [
  {
    title: 'a word that is allowed',
    clause: fact,
    source: 'facts: { flue-gas-treatment: none }',
    outcome: 'meets',
  },
  {
    title: 'a word that is not',
    clause: fact,
    source: 'facts: { flue-gas-treatment: sea-water }',
    outcome: 'does-not-meet',
  },
  { title: 'nobody stated it', clause: fact, outcome: 'not-reported' },
])

const letter = 'document: certification, void-on: [fuel-change]'
const documents = (...periods: readonly string[]) =>
  `documents: [${periods.map((period) => `{ kind: certification, title: Letter${period} }`).join(', ')}]`
const event = (date: string, kind = 'fuel-change') =>
  `\nevents: [{ date: ${date}, kind: ${kind}, title: New coal }]`
judgeThroughTheFrontDoor('a document', [
  {
    title: 'in force',
    clause: letter,
    source: documents(', from: 2026-01-01, to: 2026-12-31'),
    outcome: 'meets',
  },
  {
    title: 'its only day is the day of the verdict',
    clause: letter,
    source: documents(', from: 2026-03-10, to: 2026-03-10'),
    outcome: 'meets',
  },
  { title: 'without an end', clause: letter, source: documents(', from: 2026-01-01'), outcome: 'meets' },
  {
    title: 'of the lot itself',
    clause: letter,
    lots: [{ more: documents(', from: 2026-01-01') }],
    outcome: 'meets',
  },
  {
    title: 'ended the day before',
    clause: letter,
    source: documents(', from: 2026-01-01, to: 2026-03-09'),
    outcome: 'does-not-meet',
  },
  {
    title: 'begins the day after',
    clause: letter,
    source: documents(', from: 2026-03-11'),
    outcome: 'does-not-meet',
  },
  {
    title: 'none of the kind',
    clause: letter,
    source: 'documents: [{ kind: other-letter, title: Letter }]',
    outcome: 'not-reported',
  },
  {
    title: 'void since an event after it began',
    clause: letter,
    source: documents(', from: 2026-01-01') + event('2026-02-01'),
    outcome: 'does-not-meet',
  },
  {
    title: 'given on the day of the event',
    clause: letter,
    source: documents(', from: 2026-02-01') + event('2026-02-01'),
    outcome: 'meets',
  },
  {
    title: 'renewed after the event, the old one still listed',
    clause: letter,
    source: documents(', from: 2026-01-01', ', from: 2026-02-10') + event('2026-02-01'),
    outcome: 'meets',
  },
  {
    title: 'an event of another kind',
    clause: letter,
    source: documents(', from: 2026-01-01') + event('2026-02-01', 'outage'),
    outcome: 'meets',
  },
  {
    title: 'an approval of the source as a whole',
    clause: 'document: source-approval',
    source: 'approvals: [{ from: 2026-01-01, by: Office, scope: all uses }]',
    outcome: 'meets',
  },
  {
    title: 'an approval of a clause is none of the source',
    clause: 'document: source-approval',
    approval: 'from: 2026-01-01, by: Office, scope: loss',
    outcome: 'not-reported',
  },
])

const allowed =
  'allowed-classes: [F], accepted-as: [{ class: C, as: F, when: [{ property: oxide-sum, at-least: 66.0 % }, { property: SiO2, at-least: 38.0 % }] }]'
const set = 'classes: [N, F, C]'
judgeThroughTheFrontDoor('allowed classes', [
  { title: 'the allowed class', clause: allowed, set, source: 'class: F', outcome: 'meets' },
  { title: 'another class', clause: allowed, set, source: 'class: N', outcome: 'does-not-meet' },
  { title: 'no class', clause: allowed, set, outcome: 'not-reported' },
  {
    title: 'C as F: a sum of 66.0 with 40.0 of silica',
    clause: allowed,
    set,
    source: 'class: C',
    lots: ['SiO2: 40.0 %, Al2O3: 20.0 %, Fe2O3: 6.0 %'],
    outcome: 'meets',
  },
  {
    title: 'C as F: one of two laboratories finds 37.0 of silica, which leaves it open',
    clause: allowed,
    set,
    source: 'class: C',
    lots: [
      {
        analyses: [
          { results: 'SiO2: 40.0 %, Al2O3: 24.0 %, Fe2O3: 6.0 %' },
          { results: 'SiO2: 37.0 %, Al2O3: 24.0 %, Fe2O3: 6.0 %', laboratory: 'dock' },
        ],
      },
    ],
    outcome: 'not-reported',
  },
  {
    title: 'C as F: a sum of 65.9',
    clause: allowed,
    set,
    source: 'class: C',
    lots: ['SiO2: 40.0 %, Al2O3: 20.0 %, Fe2O3: 5.9 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'C as F: 37.9 of silica',
    clause: allowed,
    set,
    source: 'class: C',
    lots: ['SiO2: 37.9 %, Al2O3: 23.0 %, Fe2O3: 6.0 %'],
    outcome: 'does-not-meet',
  },
  { title: 'C as F: without the oxides', clause: allowed, set, source: 'class: C', outcome: 'not-reported' },
])

const sampling = 'sampling: { properties: [density], every: 2000 t, or-every: 30 d }'
const composites = 'sampling: { properties: [density], every: 2000 t, sample: composite }'
const fresh = 'sampling: { properties: [density], every: 2000 t, new-source: { every: 400 t, for: 180 d } }'
/** A lot with a density, of so many tonnes. */
const tested = (on: string, tonnes: number) => ({ analyses: 'density: 2.40 g/cm3', on, tonnes })
const untested = (on: string, tonnes: number) => ({ on, tonnes })
judgeThroughTheFrontDoor('sampling', [
  {
    title: '2000 t since the test before are the very limit',
    clause: sampling,
    lots: [tested('2026-02-20', 500), tested('2026-03-01', 2000)],
    outcome: 'meets',
  },
  {
    title: '2001 t since the test before',
    clause: sampling,
    lots: [tested('2026-02-20', 500), tested('2026-03-01', 2001)],
    outcome: 'does-not-meet',
  },
  {
    title: 'an untested lot between adds its mass: 1500 + 501',
    clause: sampling,
    lots: [tested('2026-02-10', 500), untested('2026-02-20', 1500), tested('2026-03-01', 501)],
    outcome: 'does-not-meet',
  },
  {
    title: '30 d since the test before are the very limit',
    clause: sampling,
    lots: [tested('2026-01-30', 500), tested('2026-03-01', 500)],
    outcome: 'meets',
  },
  {
    title: '31 d since the test before',
    clause: sampling,
    lots: [tested('2026-01-29', 500), tested('2026-03-01', 500)],
    outcome: 'does-not-meet',
  },
  {
    title: 'an untested lot 20 d after the test, 500 t',
    clause: sampling,
    lots: [tested('2026-02-09', 500), untested('2026-03-01', 500)],
    outcome: 'meets',
  },
  {
    title: 'a grab is no composite: 1500 + 1500 t since the composite before',
    clause: composites,
    lots: [
      tested('2026-02-10', 500),
      {
        ...untested('2026-02-20', 1500),
        analyses: [{ results: 'density: 2.40 g/cm3', sample: 'G' as const }],
      },
      tested('2026-03-01', 1500),
    ],
    outcome: 'does-not-meet',
  },
  {
    title: 'composites of 1500 t each',
    clause: composites,
    lots: [tested('2026-02-10', 500), tested('2026-02-20', 1500), tested('2026-03-01', 1500)],
    outcome: 'meets',
  },
  // Production of the first lot begins five days before its sample.
  {
    title: 'a source with records of 179 d is new: 500 t are over 400',
    clause: fresh,
    lots: [tested('2025-09-08', 300), tested('2026-03-01', 500)],
    outcome: 'does-not-meet',
  },
  {
    title: 'a source with records of 180 d is not: 500 t are within 2000',
    clause: fresh,
    lots: [tested('2025-09-07', 300), tested('2026-03-01', 500)],
    outcome: 'meets',
  },
  {
    title: 'a new source with 400 t, the very limit',
    clause: fresh,
    lots: [tested('2026-02-01', 300), tested('2026-03-01', 400)],
    outcome: 'meets',
  },
])
