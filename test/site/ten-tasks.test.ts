/** What people come for takes three presses at most from the front page, on a phone and on a wide screen. */
import { describe, expect, it } from 'vitest'
import { siteInBrowser } from './site-in-browser.ts'
import { done, TASKS } from './ten-tasks.ts'

const demo = siteInBrowser('load')

describe.each([
  ['a phone', { width: 390, height: 844 }],
  ['a wide screen', { width: 1440, height: 900 }],
] as const)('on %s', (_screen, viewport) => {
  it.each(TASKS)('$title: the answer is there after three presses at most', async (task) => {
    const page = await demo.open('', { viewport })
    const { says, presses } = await done(page, task)
    expect(says).toMatch(task.says)
    expect(presses).toBeLessThanOrEqual(3)
    await page.context().close()
  })
})
