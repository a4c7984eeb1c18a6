/** The table of findings, whatever they are about. */
import type { Finding } from '../../core/checks/finding.ts'
import { type WordedFinding, wordedFinding } from '../../words/findings.ts'
import type { Edition } from '../shape/edition.ts'
import { findingNames } from '../shape/finding-names.ts'
import { lotTable, YEAR_OF_SAMPLING } from './rows-of-lots.ts'
import { type Column, type FilledColumn, filled } from './table.ts'

interface FindingRow {
  readonly finding: WordedFinding
  readonly aboutKind: 'lot' | 'source' | 'laboratory'
}

const COLUMNS: readonly Column<FindingRow>[] = [
  {
    name: 'finding',
    type: 'text',
    required: true,
    description: 'Id of the finding, by which it is answered',
    of: ({ finding }) => finding.id,
  },
  {
    name: 'audit_check',
    type: 'text',
    required: true,
    description: 'Check that raised it',
    of: ({ finding }) => finding.check,
  },
  {
    name: 'severity',
    type: 'text',
    required: true,
    description: 'blocks, warning or information',
    of: ({ finding }) => finding.severity,
  },
  {
    name: 'lowered_from',
    type: 'text',
    description: 'Severity by default, where the site has lowered it',
    of: ({ finding }) => finding.loweredFrom,
  },
  {
    name: 'about_kind',
    type: 'text',
    required: true,
    description: 'Whether it is about a lot, a source or a laboratory',
    of: ({ aboutKind }) => aboutKind,
  },
  {
    name: 'about',
    type: 'text',
    required: true,
    description: 'The lot as SOURCE/LOT, or the source or laboratory by id',
    of: ({ finding }) => finding.about,
  },
  {
    name: 'sentence',
    type: 'text',
    required: true,
    description: 'The question in a sentence',
    of: ({ finding }) => finding.sentence,
  },
  {
    name: 'evidence',
    type: 'text',
    description: 'Evidence, a line each',
    of: ({ finding }) => finding.evidence.join('\n') || null,
  },
]

/**
 * Rows of findings that are about no lot.
 * @param aboutKind told, since a source and a laboratory may have the same id
 */
export function findingColumns(
  edition: Edition,
  findings: readonly Finding[],
  aboutKind: FindingRow['aboutKind'],
): FilledColumn[] {
  return filled(COLUMNS, findingRows(edition, findings, aboutKind))
}

function findingRows(
  edition: Edition,
  findings: readonly Finding[],
  aboutKind: FindingRow['aboutKind'],
): FindingRow[] {
  if (findings.length === 0) return []
  const names = findingNames(edition)
  return findings.map((finding) => ({ finding: wordedFinding(finding, names), aboutKind }))
}

export const FINDINGS = lotTable(
  {
    name: 'findings',
    title: 'Findings',
    description: `A row for each question that an audit check raised. ${YEAR_OF_SAMPLING} What concerns a source has no year, what concerns a laboratory has neither source nor year.`,
  },
  COLUMNS,
  ({ findings }, edition) => findingRows(edition, findings, 'lot'),
)
