/** Codes of the faults that compiling a criterion finds, each with its meaning for the developers' list. */
export const CRITERION_CODES = {
  'criterion-extends-not-supported': 'the set extends another or changes its clauses, which this version does not read yet',
  'criterion-clause-without-id': 'a clause outside a group has no permanent id',
  'criterion-clause-duplicate': 'two clauses of a set have the same id',
  'criterion-group-mixed': 'a clause is both a group and a comparison, or both any-of and all-of',
  'criterion-property-missing': 'a clause is neither a group nor names a property',
  'criterion-condition-unknown': 'a clause names a condition that no record describes',
  'criterion-condition-missing': 'a clause on an index or a mortar result has no condition or no age',
  'criterion-no-operator': 'a clause or its when states no limit and asks for no report',
  'criterion-unit': 'a limit is not a quantity of the kind that its property or deviation needs',
  'criterion-class-unknown': 'a limit or a clause names a class that the set does not have',
  'criterion-limits-contradict': 'no value can meet the limits of a clause together',
  'criterion-resolution': 'a rounding step is not above zero',
  'criterion-relative-without-deviation': 'relative is set where nothing is compared with a reference',
  'criterion-deviation': 'a deviation has no reference, or one that is not supported yet',
  'criterion-decision-rule': 'a decision rule names no rule or two',
  'criterion-release-clause': 'a release entry names a clause that the set does not have',
  'criterion-superseded-by-unknown': 'the later edition named is not among the criteria',
} as const

export type CriterionCode = keyof typeof CRITERION_CODES
