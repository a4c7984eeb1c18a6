/** WCAG 2.2 AA on one page of each kind, by the rules that a program can check. */
import AxeBuilder from '@axe-core/playwright'
import { describe, expect, it } from 'vitest'
import { kindsOfPage } from './kinds-of-page.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('load')

describe('the built site', () => {
  it.each(['light', 'dark'] as const)(
    'has no finding of the accessibility rules (WCAG 2.2 AA), %s',
    async (colorScheme) => {
      for (const path of kindsOfPage(demo.site.edition)) {
        const page = await demo.open(path, { colorScheme })
        // Only colours differ in the dark.
        const rules = new AxeBuilder({ page })
        const { violations } = await (colorScheme === 'dark'
          ? rules.withRules(['color-contrast'])
          : rules.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        ).analyze()
        expect(
          violations.map(
            (violation) => `${path} (${colorScheme}): ${violation.id}, ${violation.nodes[0]?.html}`,
          ),
        ).toEqual([])
        await page.context().close()
      }
    },
    180_000,
  )
})
