/** The invented second round of screening: a plan with its programme, before any reading. */
import { FINISHED_ALONE, materialsText, studyMaterial } from './study-materials.ts'
import { PLAN_DIGESTS } from './plan-digests.ts'

const MATERIALS = ['Q1', 'L2', 'F1', 'W2', 'A2', 'A3', 'H2', 'P1'].map(studyMaterial)

export function plannedFiles(): { path: string; text: string }[] {
  return [{ path: 'studies/P-01.yaml', text: RECORD }]
}

const RECORD = `# Invented example data: no such material, laboratory or programme exists.
title: Does the best condition of the first round hold with a second cement and in fog?
kind: screening
question: Do replacement, curing temperature, cement and curing each move the gap between reactive and inert materials?
by: statistician of the register
laboratories:
  '1': { note: 'One laboratory, one operator, as in the first round.' }
cements:
  C1: { Na2O-equivalent: 0.62 %, note: 'A further delivery of the cement of the first round.' }
  C2: { Na2O-equivalent: 0.88 %, note: 'A cement of higher alkali.' }
plan:
  fixed: 2026-03-20
  hypothesis: >-
    At 50 °C the gap between the lowest reactive and the highest inert material stays open with both cements; curing in fog in place of lime
    water changes the indices by less than the difference between the cements.
  classes: >-
    By calcium hydroxide consumed in two outside laboratories: inert below 5 g/100 g, weak from 5 to 30, reactive above 30; never by the
    indices that are judged here.
  exclusions: A batch whose bath or cabinet left its temperature by more than 2 °C for a day.
  batches: 2
  threshold: { strength-activity-index: 5 %, resistivity-index: 50 % }
  digest: ${PLAN_DIGESTS['P-01']}
programme:
  crossed:
    replacement: { R30: 30 %, R50: 50 % }
    temperature: { '23': 23 degC, '40': 40 degC, '50': 50 degC }
    cement: { A: C1, B: C2 }
    curing: { L: saturated-lime-water, F: fog }
  every: { w/cm: 0.485, flow: constant-w/cm }
  # Half of 24 conditions: at each temperature, curing is the product of replacement and cement.
  fraction:
    generators: { curing: [replacement, cement] }
    asked: [[replacement], [temperature], [cement], [curing], [replacement, temperature], [temperature, cement]]
  left-out:
    - materials: [F1, A3]
      conditions: [R30-40-A-F, R30-40-B-L, R50-40-A-L, R50-40-B-F]
      why: At 40 °C two materials of a class do.
  control: shared
  casting:
    first: 2026-04-07
    on: [tuesday, wednesday, thursday]
    mortars-a-day: 9
    at: '10:00'
    except: [2026-05-14]
  ages:
    - { age: 7 d, within: 3 h, strength: 3, resistivity: 3 }
    - { age: 28 d, within: 12 h, strength: 3, resistivity: 3 }
    - { age: 91 d, within: 24 h, strength: 3, resistivity: 3 }
  resistivity-on: crushed
  spare: 1
  in-mould: 24 h
  batch: { cementitious: 740 g, sand: 2035 g }
  assumed: { strength-activity-index: 2 %, resistivity-index: 5 %, from: 'the scatter between batches found in the first round, S-01, rounded up' }
materials:
${materialsText(MATERIALS, FINISHED_ALONE)}specimens: { cube: 50 mm }
note: >-
  24 h in the mould at 23 °C, then a step into lime water or fog at the curing temperature. Cooled for 2 h at 23 °C, control and test alike,
  read surface dry and then crushed.
`
