/** Differences as text: grouped by pattern, a few examples of each. */
import type { Difference } from './difference.ts'

const EXAMPLES = 10
const GROUPS = 30
const EXCERPT = 110

export function grouped(differences: readonly Difference[]): string {
  const groups = groupsBy(differences, groupOf)
  const rest = groupsBy(groups.slice(GROUPS).flat(), ({ pattern }) => pattern)
  const hidden = rest.slice(GROUPS).flat().length
  return [
    ...groups.slice(0, GROUPS).map(groupText),
    ...rest.slice(0, GROUPS).map(shortText),
    ...(hidden === 0 ? [] : [`and ${hidden} more differences`]),
  ].join('\n\n')
}

/** The biggest group first. */
function groupsBy(
  differences: readonly Difference[],
  key: (difference: Difference) => string,
): Difference[][] {
  return [...Map.groupBy(differences, key).values()].sort((one, other) => other.length - one.length)
}

/** Every difference, a line each. */
export function listed(differences: readonly Difference[]): string {
  return differences.map((difference) => `${sentence(difference)}\n`).join('')
}

function groupText(group: readonly Difference[]): string {
  const head = group.length === 1 ? [] : [`${group[0]?.pattern}: ${group.length} differences`]
  const examples = spread(group).map((difference) => `  ${sentence(difference)}`)
  return [
    ...head,
    ...examples,
    ...(group.length > EXAMPLES ? [`  and ${group.length - EXAMPLES} more`] : []),
  ].join('\n')
}

/** Differences at spots of one pattern, each of its own kind: a count and one example. */
function shortText(group: readonly Difference[]): string {
  const [first] = group
  return first === undefined
    ? ''
    : `${first.pattern}: ${group.length} various differences\n  ${sentence(first)}`
}

/** Examples from the beginning to the end of a group, since neighbours resemble each other most. */
function spread(group: readonly Difference[]): readonly Difference[] {
  const pitch = Math.max(1, group.length / EXAMPLES)
  return group.filter((_, place) => Math.floor(place / pitch) !== Math.floor((place - 1) / pitch))
}

/** Differences of one pattern and of the same words, numbers and digests apart, belong together. */
function groupOf({ pattern, was, is }: Difference): string {
  if (was === null) return `${pattern} added`
  if (is === null) return `${pattern} removed`
  const { before, after } = changedPart(was, is)
  return `${pattern} ${before} → ${after}`.replaceAll(/[\da-f]{16,}|[\d.]+/g, '#')
}

export function sentence({ where, was, is }: Difference): string {
  if (was === null) return `${where}: was not there, is ${excerpt(is ?? '')}`
  if (is === null) return `${where}: was ${excerpt(was)}, is gone`
  const { start } = changedPart(was, is)
  return `${where}: was ${excerpt(was, start)}, is ${excerpt(is, start)}`
}

/** What two texts do not have in common, widened to whole words. */
function changedPart(was: string, is: string): { start: number; before: string; after: string } {
  const shorter = Math.min(was.length, is.length)
  let start = 0
  while (start < shorter && was[start] === is[start]) start += 1
  while (start > 0 && /\w/.test(was[start - 1] ?? '')) start -= 1
  let end = 0
  while (end < shorter - start && was.at(-1 - end) === is.at(-1 - end)) end += 1
  while (end > 0 && /\w/.test(was.at(-end) ?? '')) end -= 1
  return { start, before: was.slice(start, was.length - end), after: is.slice(start, is.length - end) }
}

/** The text around the first difference, on one line. */
function excerpt(text: string, start = 0): string {
  const from = text.length <= EXCERPT ? 0 : Math.max(0, start - 30)
  const part = text.slice(from, from + EXCERPT).replaceAll(/\s+/g, ' ')
  return `${from === 0 ? '' : '…'}${part}${from + EXCERPT < text.length ? '…' : ''}`
}
