/** Differences between the styles of two sites: for each page, the rules of all its style sheets. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Compared, Difference } from './difference.ts'
import { linkedStyles } from './html-tokens.ts'
import { styleRules } from './style-rules.ts'

/**
 * @param label put before the page, for example "site"
 * @param pages paths of pages that both sites have
 * @returns each distinct pair of style sheet lists is compared once and reported at its first page
 */
export function styleDifferences(label: string, pages: readonly string[], was: string, is: string): Compared {
  const seen = new Set<string>()
  const differences: Difference[] = []
  for (const page of pages) {
    const sheets = { was: sheetsOf(was, page), is: sheetsOf(is, page) }
    const pair = JSON.stringify(sheets)
    if (seen.has(pair)) continue
    seen.add(pair)
    differences.push(
      ...ruleDifferences(`${label}:${page}:styles`, rulesOf(was, sheets.was), rulesOf(is, sheets.is)),
    )
  }
  return { differences, reports: 0, values: 0, files: 0 }
}

function sheetsOf(folder: string, page: string): string[] {
  return linkedStyles(readFileSync(join(folder, page), 'utf8'))
}

function rulesOf(folder: string, sheets: readonly string[]): string[] {
  return sheets.flatMap((sheet) => styleRules(readFileSync(join(folder, '_astro', sheet), 'utf8')))
}

export function ruleDifferences(where: string, was: readonly string[], is: readonly string[]): Difference[] {
  const [before, after] = [new Set(was), new Set(is)]
  const pattern = `${where.replace(/:.*:/, ':**:')}`
  return [
    ...[...before]
      .filter((rule) => !after.has(rule))
      .map((rule) => ({ where, pattern, was: rule, is: null })),
    ...[...after]
      .filter((rule) => !before.has(rule))
      .map((rule) => ({ where, pattern, was: null, is: rule })),
  ]
}
