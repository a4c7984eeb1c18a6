/** The accessibility rules that a program can check: WCAG 2.2 AA and the best practice of axe-core. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright-core'

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

export interface Seen {
  readonly width: number
  readonly colorScheme: 'light' | 'dark'
}

/** Sets a page to a width and colours, and says what breaks a rule there: the rule with its first element. */
export async function violationsIn(page: Page, { width, colorScheme }: Seen): Promise<string[]> {
  await page.setViewportSize({ width, height: 1000 })
  await page.emulateMedia({ colorScheme })
  // No page has a frame, so that one run in the page itself tells all, and what passes need not be listed.
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .options({ runOnly: { type: 'tag', values: TAGS }, resultTypes: ['violations'] })
    .analyze()
  return violations.map(({ id, nodes }) => `${width} px, ${colorScheme}: ${id}, ${nodes[0]?.html}`)
}
