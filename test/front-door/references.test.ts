/** A deviation: from the mean of preceding results, from the declared value, from the control. */
import { judgeThroughTheFrontDoor } from './front-door.ts'

const relative = 'property: density, deviation-from: { preceding: 10 }, relative: yes, magnitude-at-most: 5 %'
const points =
  'property: residue-45um, deviation-from: { preceding: 10 }, magnitude-at-most: 5 percentage points'
/** Densities before, with the mean 2.40: 5 % of it is 0.12. */
const densities = ['density: 2.30 g/cm3', 'density: 2.40 g/cm3', 'density: 2.50 g/cm3']
/** Residues before, with the mean 20.0. */
const residues = ['residue-45um: 19.0 %', 'residue-45um: 20.0 %', 'residue-45um: 21.0 %']

judgeThroughTheFrontDoor('a deviation from preceding results', [
  {
    title: 'density 2.52 is 5.0 % over the mean of 2.40',
    clause: relative,
    lots: [...densities, 'density: 2.52 g/cm3'],
    outcome: 'meets',
  },
  {
    title: 'density 2.28 is 5.0 % under it',
    clause: relative,
    lots: [...densities, 'density: 2.28 g/cm3'],
    outcome: 'meets',
  },
  {
    title: 'density 2.53 is 5.4 % over it',
    clause: relative,
    lots: [...densities, 'density: 2.53 g/cm3'],
    outcome: 'does-not-meet',
  },
  {
    title: 'a first lot has nothing before it',
    clause: relative,
    lots: ['density: 2.40 g/cm3'],
    outcome: 'insufficient-history',
  },
  {
    title: 'without a result of its own',
    clause: relative,
    lots: [...densities, {}],
    outcome: 'not-reported',
  },
  {
    title: 'residue 25.0 is 5.0 points over 20.0, not 5 % of it',
    clause: points,
    lots: [...residues, 'residue-45um: 25.0 %'],
    outcome: 'meets',
  },
  {
    title: 'residue 25.04 is 5.0 points over it in steps of 0.1',
    clause: points,
    lots: [...residues, 'residue-45um: 25.04 %'],
    outcome: 'meets',
  },
  {
    title: 'residue 25.1 is 5.1 points over it',
    clause: points,
    lots: [...residues, 'residue-45um: 25.1 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'residue 14.9 is 5.1 points under it',
    clause: points,
    lots: [...residues, 'residue-45um: 14.9 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'of the results 10, 20, 20 the last two have the mean 20, all three 16.7',
    clause: points.replace('10', '2'),
    lots: ['residue-45um: 10.0 %', 'residue-45um: 20.0 %', 'residue-45um: 20.0 %', 'residue-45um: 25.0 %'],
    outcome: 'meets',
  },
  {
    title: 'the series begins anew at an event between 10 and 20',
    clause: points,
    source: 'events: [{ date: 2026-02-15, kind: fuel-change, title: New coal, restarts-series: yes }]',
    lots: ['residue-45um: 10.0 %', 'residue-45um: 20.0 %', 'residue-45um: 25.0 %'],
    outcome: 'meets',
  },
  {
    title: 'without the event 25 is 10 points over the mean of 10 and 20',
    clause: points,
    lots: ['residue-45um: 10.0 %', 'residue-45um: 20.0 %', 'residue-45um: 25.0 %'],
    outcome: 'does-not-meet',
  },
])

const declared = 'property: density, deviation-from: { declared: yes }, magnitude-at-most: 200 kg/m3'
const declaredShare =
  'property: density, deviation-from: { declared: yes }, relative: yes, magnitude-at-most: 10.0 %'
const source = 'declared: { density: 2000 kg/m3 }'
judgeThroughTheFrontDoor('a deviation from the declared value', [
  {
    title: '2.20 g/cm3 is 200 kg/m3 over 2000',
    clause: declared,
    source,
    lots: ['density: 2.20 g/cm3'],
    outcome: 'meets',
  },
  {
    title: '1.80 g/cm3 is 200 kg/m3 under it',
    clause: declared,
    source,
    lots: ['density: 1.80 g/cm3'],
    outcome: 'meets',
  },
  {
    title: '2.21 g/cm3 is 210 kg/m3 over it',
    clause: declared,
    source,
    lots: ['density: 2.21 g/cm3'],
    outcome: 'does-not-meet',
  },
  { title: 'nothing is declared', clause: declared, lots: ['density: 2.20 g/cm3'], outcome: 'not-reported' },
  {
    title: '2.20 g/cm3 is 10.0 % over 2000 kg/m3',
    clause: declaredShare,
    source,
    lots: ['density: 2.20 g/cm3'],
    outcome: 'meets',
  },
  {
    title: '2.21 g/cm3 is 10.5 % over it',
    clause: declaredShare,
    source,
    lots: ['density: 2.21 g/cm3'],
    outcome: 'does-not-meet',
  },
])

const shrinkage =
  'property: drying-shrinkage, deviation-from: { control: yes }, at-most: 0.03 percentage points'
const demand =
  'property: air-entraining-demand, deviation-from: { control: yes }, relative: yes, magnitude-at-most: 20 %'
const beside = (results: string, control?: string) => [
  { analyses: [{ results, ...(control === undefined ? {} : { control }) }] },
]
judgeThroughTheFrontDoor('a deviation from the control', [
  {
    title: '0.09 is 0.03 points over 0.06',
    clause: shrinkage,
    lots: beside('drying-shrinkage: 0.09 %', 'drying-shrinkage: 0.06 %'),
    outcome: 'meets',
  },
  {
    title: '0.10 is 0.04 points over 0.06',
    clause: shrinkage,
    lots: beside('drying-shrinkage: 0.10 %', 'drying-shrinkage: 0.06 %'),
    outcome: 'does-not-meet',
  },
  {
    title: 'less than the control is no excess',
    clause: shrinkage,
    lots: beside('drying-shrinkage: 0.01 %', 'drying-shrinkage: 0.06 %'),
    outcome: 'meets',
  },
  {
    title: 'no result of the control',
    clause: shrinkage,
    lots: beside('drying-shrinkage: 0.09 %'),
    outcome: 'not-reported',
  },
  {
    title: '2.40 g is 20 % over 2.00 g',
    clause: demand,
    lots: beside('air-entraining-demand: 2.40 g', 'air-entraining-demand: 2.00 g'),
    outcome: 'meets',
  },
  {
    title: '1.60 g is 20 % under it',
    clause: demand,
    lots: beside('air-entraining-demand: 1.60 g', 'air-entraining-demand: 2.00 g'),
    outcome: 'meets',
  },
  {
    title: '2.42 g is 21 % over it',
    clause: demand,
    lots: beside('air-entraining-demand: 2.42 g', 'air-entraining-demand: 2.00 g'),
    outcome: 'does-not-meet',
  },
])
