/** What a supplement did to a clause, in words. */
import type { ClauseChange } from '../core/criteria/criterion.ts'

export const CHANGE_WORDS: Readonly<Record<ClauseChange['change'], string>> = {
  tighten: 'Tightened',
  relax: 'Relaxed',
  promote: 'Made mandatory',
  'replace-method': 'Given another method',
  'set-frequency': 'Given another frequency',
  'set-decision-rule': 'Given a decision rule of its own',
}
