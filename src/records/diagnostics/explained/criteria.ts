import type { Explanation } from './explanation.ts'

const SET = 'criteria/strength.yaml'

/** Codes of acceptance criteria. */
export const OF_CRITERIA = {
  'criterion-base-unknown': {
    meaning:
      'A supplement changes the clauses of another set, which it names under extends. There is no set of that id.',
    example: { file: SET, wrong: 'extends: { set: other }', right: 'extends: { set: plain }' },
    fix: 'Write the id of a set on record.',
  },
  'criterion-base-cycle': {
    meaning:
      'Each of these sets extends another until the first comes round again, so that none has clauses of its own.',
    example: { file: SET, wrong: 'extends: { set: strength }', right: 'extends: { set: plain }' },
    fix: 'Let one of them stand alone.',
  },
  'criterion-change-without-base': {
    meaning: 'A change refers to a clause of the set that is extended, and this one extends none.',
    example: {
      file: SET,
      wrong: '  - { change: remove, clause: loss }',
      right: '  - { change: remove, clause: loss }\nextends: { set: plain }',
    },
    fix: 'Add extends with the set that is meant, or write a clause of its own.',
  },
  'criterion-change-clause': {
    meaning: 'A change names a clause that the extended set does not have.',
    example: {
      file: SET,
      wrong: '  - { change: remove, clause: density }\nextends: { set: plain }',
      right: '  - { change: remove, clause: loss }\nextends: { set: plain }',
    },
    fix: 'Write the id of the clause as it stands in the extended set.',
  },
  'criterion-change-form': {
    meaning:
      'The change does not fit its clause: what is mandatory already cannot be promoted, and what has no frequency cannot be given another.',
    example: {
      file: SET,
      wrong: '  - { change: promote, clause: loss }\nextends: { set: plain }',
      right: '  - { change: remove, clause: loss }\nextends: { set: plain }',
    },
    fix: 'Choose a change that fits, or remove the clause and add another.',
  },
  'criterion-change-direction': {
    meaning:
      'The word says which way a limit goes, and the limit goes the other way. One of the two is a slip.',
    example: {
      file: SET,
      wrong: '  - { change: tighten, clause: loss, at-most: 7.0 % }\nextends: { set: plain }',
      right: '  - { change: tighten, clause: loss, at-most: 5.0 % }\nextends: { set: plain }',
    },
    fix: 'Correct the limit, or write relax for tighten.',
  },
  'criterion-clause-without-id': {
    meaning:
      'Reports, supplements and issued documents name a clause by its id, which therefore never changes.',
    example: {
      file: SET,
      wrong: '{ property: strength-activity-index, condition: warm, age: 7 d,',
      right: '{ clause: index, property: strength-activity-index, condition: warm, age: 7 d,',
    },
    fix: 'Add clause with a short id.',
  },
  'criterion-clause-duplicate': {
    meaning:
      'Two clauses of one set have the same id, and nothing says which one a report or a supplement means.',
    example: {
      file: SET,
      wrong: '  - { clause: index, property: density, at-least: 2 g/cm3, set-by: { user: test } }',
      right: '  - { clause: density, property: density, at-least: 2 g/cm3, set-by: { user: test } }',
    },
    fix: 'Give each clause an id of its own.',
  },
  'criterion-group-mixed': {
    meaning:
      'A clause is one thing: a group of others, a comparison with a limit, a fact, a document, a class or a sampling rule.',
    example: {
      file: SET,
      wrong:
        '  - { clause: lime, any-of: [{ clause: total, property: CaO, at-most: 3 %, set-by: { user: test } }], property: free-CaO, at-most: 1 %, set-by: { user: test } }',
      right:
        '  - { clause: lime, any-of: [{ clause: total, property: CaO, at-most: 3 %, set-by: { user: test } }, { clause: free, property: free-CaO, at-most: 1 %, set-by: { user: test } }] }',
    },
    fix: 'Move what does not belong into a member of the group or into a clause of its own.',
  },
  'criterion-property-missing': {
    meaning: 'A clause that compares must say what is compared.',
    example: {
      file: SET,
      wrong: '{ clause: index, condition: warm, age: 7 d,',
      right: '{ clause: index, property: strength-activity-index, condition: warm, age: 7 d,',
    },
    fix: 'Add property with the key of what is judged.',
  },
  'criterion-condition-unknown': {
    meaning: 'A clause names the condition of a test, and no record describes it.',
    example: { file: SET, wrong: 'condition: hot', right: 'condition: warm' },
    fix: 'Write the id of a condition on record, or write the condition.',
  },
  'criterion-condition-missing': {
    meaning:
      'An index exists only at a condition and an age, and a limit on it without them could be met by any test.',
    example: {
      file: SET,
      wrong: 'property: strength-activity-index, age: 7 d',
      right: 'property: strength-activity-index, condition: warm, age: 7 d',
    },
    fix: 'Add condition and age.',
  },
  'criterion-no-operator': {
    meaning: 'A clause states a limit, or that the result is to be reported. This one states neither.',
    example: {
      file: SET,
      wrong: 'age: 7 d, set-by: { user: test }',
      right: 'age: 7 d, at-least: 60 %, set-by: { user: test }',
    },
    fix: 'Add at-least, at-most or another limit, or report.',
  },
  'criterion-unit': {
    meaning: 'A limit is a quantity of the kind that its property is measured in.',
    example: { file: SET, wrong: 'at-least: 60 MPa', right: 'at-least: 60 %' },
    fix: 'Write the limit in a unit of the property.',
  },
  'criterion-limit-range': {
    meaning:
      'No result can lie where the limit does, so that every lot would meet the clause, or none: a residue on a sieve is never below 0 % nor above 100 %.',
    example: { file: SET, wrong: 'at-least: 6000 %', right: 'at-least: 60 %' },
    fix: 'Check the number, its sign and its unit. To ask for a result without a limit, write report: yes.',
  },
  'criterion-class-unknown': {
    meaning: 'A limit is given for a class that the set does not list.',
    example: { file: SET, wrong: 'at-least: { Z: 60 % }', right: 'at-least: 60 %' },
    fix: 'List the classes of the set, or write one limit for all.',
  },
  'criterion-limits-contradict': {
    meaning: 'No value can meet both limits of the clause, so that every lot would fail.',
    example: {
      file: SET,
      wrong: 'at-least: 60 %, at-most: 50 %',
      right: 'at-least: 60 %, at-most: 150 %',
      instead: 'at-least: 60 %',
    },
    fix: 'Correct one of the two.',
  },
  'criterion-resolution': {
    meaning: 'Values are rounded to this step before they are compared, and no step is zero or less.',
    example: {
      file: SET,
      wrong: 'resolution: 0, at-least: 60 %',
      right: 'resolution: 1, at-least: 60 %',
      instead: 'at-least: 60 %',
    },
    fix: 'Write the step, such as 1 or 0.1, or leave it out.',
  },
  'criterion-statistic': {
    meaning: 'The statistic does not fit the clause, such as a mean over half a result.',
    example: {
      file: SET,
      wrong: 'at-least: 60 %, statistic: { rolling-mean: 2.5 }',
      right: 'at-least: 60 %, statistic: { rolling-mean: 5 }',
      instead: 'at-least: 60 %',
    },
    fix: 'Write a whole number of results, or choose another statistic.',
  },
  'criterion-sampling': {
    meaning:
      'A sampling clause asks for a sample every so many tonnes, every so often, or both; this one says neither, or what nobody can keep.',
    example: {
      file: SET,
      wrong: '  - { clause: often, sampling: { properties: [density], sample: grab } }',
      right:
        '  - { clause: often, sampling: { properties: [density], sample: grab, every: 400 t }, set-by: { user: test } }',
    },
    fix: 'Add every with a mass, or-every with a time, or both.',
  },
  'criterion-premise': {
    meaning:
      'A clause or a condition on one names a fact of the source, and must say which of its values are allowed.',
    example: {
      file: SET,
      wrong: '  - { clause: fuel, fact: coal-only }',
      right: '  - { clause: fuel, fact: coal-only, is: [yes], set-by: { user: test } }',
    },
    fix: 'Add is with the allowed values, or property with a limit.',
  },
  'criterion-relative-without-deviation': {
    meaning:
      'A deviation may be taken in per cent of its reference; where nothing is compared with a reference, relative means nothing.',
    example: { file: SET, wrong: 'relative: yes, at-least: 60 %', right: 'at-least: 60 %' },
    fix: 'Take relative out, or add deviation-from.',
  },
  'criterion-deviation': {
    meaning:
      'A deviation is taken from something: the mean of the preceding results, the declared value, or the control.',
    example: {
      file: SET,
      wrong: 'deviation-from: { control: no }, magnitude-at-most: 5 percentage points',
      right: 'deviation-from: { declared: yes }, magnitude-at-most: 5 percentage points',
      instead: 'at-least: 60 %',
    },
    fix: 'Write preceding: 10, declared: yes or control: yes.',
  },
  'criterion-decision-rule': {
    meaning:
      'A decision rule says how uncertainty enters: by a guard band, or by a probability. It names neither, or both.',
    example: {
      file: SET,
      wrong: 'decision-rule: { agreed-in: letter }, at-least: 60 %',
      right: 'decision-rule: { guarded: 2, agreed-in: letter }, at-least: 60 %',
      instead: 'at-least: 60 %',
    },
    fix: 'Name one of the two, or leave the rule out to judge as specified.',
  },
  'criterion-release-clause': {
    meaning: 'A limit for early release belongs to a clause of the same set.',
    example: {
      file: SET,
      wrong: 'release:\n  - { clause: other, with: { at-least: 50 % } }',
      right: 'release:\n  - { clause: index, with: { at-least: 65 % } }',
    },
    fix: 'Write the id of a clause of this set.',
  },
  'criterion-superseded-by-unknown': {
    meaning: 'The set says which later edition replaces it, and there is none of that id.',
    example: { file: SET, wrong: 'superseded-by: later', right: 'superseded-by: plain' },
    fix: 'Write the later edition’s record, or its id as it is.',
  },
  'criterion-from-readings': {
    meaning: 'The clause counts only results that are computed from readings, and this property never is.',
    example: {
      file: 'criteria/plain.yaml',
      wrong: 'property: loss-on-ignition, at-most: 6.0 %, from: readings',
      right: 'property: loss-on-ignition, at-most: 6.0 %',
    },
    fix: 'Take from out.',
  },
} as const satisfies Readonly<Record<string, Explanation>>
