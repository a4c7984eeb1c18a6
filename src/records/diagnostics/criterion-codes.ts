/** Codes of the faults that compiling a criterion finds, each with its meaning for the developers' list. */
export const CRITERION_CODES = {
  'criterion-base-unknown': 'a supplement extends a specification that does not exist',
  'criterion-base-cycle': 'supplements extend each other in a circle',
  'criterion-change-without-base': 'a change to a clause is in a specification that extends none',
  'criterion-change-clause': 'a change names a clause that the base does not have',
  'criterion-change-form': 'a change does not fit the clause that it names',
  'criterion-change-direction':
    'a limit is looser where the change says tighten, or tighter where it says relax',
  'criterion-clause-without-id': 'a clause outside a group has no permanent id',
  'criterion-clause-duplicate': 'two clauses of a specification have the same id',
  'criterion-group-mixed':
    'a clause is of two forms at once: a group, a comparison, a fact, a document, allowed classes, sampling',
  'criterion-property-missing': 'a clause is neither a group nor names a property',
  'criterion-condition-unknown': 'a clause names a condition that no record describes',
  'criterion-condition-missing': 'a clause on an index or a mortar result has no condition or no age',
  'criterion-no-operator': 'a clause states neither a limit nor a report, or its "when" states no limit',
  'criterion-unit': 'a limit is not a quantity of the kind that its property or deviation needs',
  'criterion-limit-range': 'a limit lies where no value of its property or deviation can',
  'criterion-class-unknown': 'a limit or a clause names a class that the specification does not have',
  'criterion-limits-contradict': 'no value can meet the limits of a clause together',
  'criterion-resolution': 'a rounding step is not above zero',
  'criterion-statistic': 'a statistic does not fit its clause',
  'criterion-sampling': 'a sampling clause states no frequency, or one that nothing can keep',
  'criterion-premise': 'a premise names neither a property nor a fact with its allowed values',
  'criterion-relative-without-deviation': 'relative is set where nothing is compared with a reference',
  'criterion-deviation': 'a deviation has no reference, or a count that is not a whole number',
  'criterion-decision-rule': 'a decision rule names neither rule, or both',
  'criterion-release-clause': 'a release entry names a clause that the specification does not have',
  'criterion-superseded-by-unknown': 'the later edition named is not among the criteria',
  'criterion-from-readings': 'a clause asks for readings of a property that is never computed from any',
} as const

export type CriterionCode = keyof typeof CRITERION_CODES
