import type { Explanation } from './explanation.ts'

const STUDY = 'studies/S-1.yaml'
const PLANNED = 'studies/P-1.yaml'

/** Codes of studies: their readings, reference tests, programmes and plans. */
export const OF_STUDIES = {
  'reading-order': {
    meaning:
      'Times of a heat record rise, and a sample grows lighter as it is heated. A reading out of order is a slip in one of the figures.',
    example: {
      file: STUDY,
      wrong: '"0 h, 5 mW", "90 h, 3 mW", "80 h, 2 mW"',
      right: '"0 h, 5 mW", "80 h, 3 mW", "90 h, 2 mW"',
    },
    fix: 'Correct the figure, or put the readings in the order in which they were taken.',
  },
  'reading-outside': {
    meaning:
      'A figure is asked for at an age or a temperature that the readings do not reach. Nothing is read beyond them.',
    example: {
      file: STUDY,
      wrong: 'age: 7 d, start: 1 h, share: 10 %, sample: 15 g',
      right: 'age: 3 d, start: 1 h, share: 10 %, sample: 15 g',
    },
    fix: 'Add the readings, or ask within them.',
  },
  'figure-off-readings': {
    meaning: 'A figure is stated beside the readings that it follows from, and they give another one.',
    example: { file: STUDY, wrong: 'heat: 240 J/g', right: 'heat: 266 J/g' },
    fix: 'Correct the readings, or leave the figure out.',
  },
  'class-unfounded': {
    meaning:
      'A study that compares reactive and inert materials must say what shows which is which, other than the indices that it judges.',
    example: {
      file: STUDY,
      wrong: 'Q1: { title: quartz, class: inert }',
      right: 'Q1: { title: quartz, class: inert, shown-by: heat }',
    },
    fix: 'Add shown-by with the test that shows the class.',
  },
  'reading-missing': {
    meaning:
      'A material or a batch of the study has no index, since its readings or those of its control are not there.',
    example: {
      file: 'studies/heat.yaml',
      wrong: "material: control, condition: H, batch: '1', age: 28 d",
      right: "material: control, condition: H, batch: '1', age: 7 d",
    },
    fix: 'Add the readings, correct condition, laboratory, batch or age, or say under departures why there are none.',
  },
  'limit-off-study': {
    meaning:
      'A limit is said to have been set by a study, and the study found another threshold, or found it under another condition.',
    example: {
      file: 'criteria/strength.yaml',
      wrong: 'at-least: 60 %, set-by: { study: heat, condition: H }',
      right: 'at-least: 65 %, set-by: { study: heat, condition: H }',
      instead: 'at-least: 60 %, set-by: { user: test }',
    },
    fix: 'Write the threshold of the study, or name the user who set another limit.',
  },
  programme: {
    meaning:
      'The programme of a study cannot be cast as it is written, or its fraction cannot tell apart the effects that are asked for.',
    example: {
      file: PLANNED,
      wrong: 'replacement: { R30: 30 %, R50: 30 % }',
      right: 'replacement: { R30: 30 %, R50: 50 % }',
    },
    fix: 'Do what the message says of the factor, the fraction or the days.',
  },
  'programme-design': {
    meaning:
      'The programme can be cast, and another design would show more for the same work, such as one with a second cement.',
    example: {
      file: PLANNED,
      wrong: 'curing: { L: saturated-lime-water, F: fog }\n  every: { w/cm: 0.485, cement: C1 }',
      right: 'cement: { A: C1, B: C2 }\n  every: { w/cm: 0.485, curing: fog }',
    },
    fix: 'Change the design, or say in the plan why it must be so.',
  },
  'plan-digest': {
    meaning:
      'A digest over the plan shows that it stood before the readings. It is missing, or the plan has changed since.',
    example: { file: 'studies/heat.yaml', wrong: 'hypothesis: It may.', right: 'hypothesis: It does.' },
    fix: 'Restore the plan; or list under departures what changed and why, and write the new digest that the message gives.',
  },
} as const satisfies Readonly<Record<string, Explanation>>
