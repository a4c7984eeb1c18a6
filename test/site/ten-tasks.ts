/**
 * The ten things that people come for, each from the front page on: what they press, and where the answer stands.
 * The source is one with failures, splits and lots near a limit.
 */
import type { Locator, Page } from 'playwright-core'

export interface Task {
  readonly title: string
  /** What is pressed, in order; a text that is typed and sent counts as one. */
  readonly presses: readonly ((page: Page) => Promise<unknown>)[]
  readonly answer: (page: Page) => Locator
  /** What the answer says. */
  readonly says: RegExp
}

const SOURCE = 'Skarnmere fly ash'
const BILL = 'bl 88489'

const follow = (name: string | RegExp) => (page: Page) =>
  page.getByRole('link', { name, exact: true }).first().click()
const follows = (address: string) => (page: Page) =>
  page.locator(`main a[href$="${address}"]`).first().click()
const openSource = (page: Page) => page.locator('.source-row h3').getByText(SOURCE, { exact: true }).click()
const ask = async (page: Page) => {
  await page.locator('#look-up-q').fill(BILL)
  await page.keyboard.press('Enter')
}
/** A line of the strip at the head of a source's page. */
const line = (title: string) => (page: Page) => page.locator('.strip-row', { hasText: title }).first()

export const TASKS: readonly Task[] = [
  {
    title: 'is this source fine',
    presses: [openSource],
    answer: line('Last 12 months'),
    says: /\d+ lots/,
  },
  {
    title: 'find a truck’s certificate',
    presses: [ask, follows('/lots/skarnmere-reclaimed/SR-2023-001/')],
    answer: (page) => page.locator('article h1').first(),
    says: /SR-2023-001/,
  },
  {
    title: 'which lots failed and by how much',
    presses: [openSource, follow(/Failed lots/)],
    answer: (page) => page.locator('#failed-lots'),
    says: /SA-\d{4}-\d{3}/,
  },
  {
    title: 'is it drifting',
    presses: [openSource],
    answer: line('Trend'),
    says: /none shown|per 10 lots|cannot be said yet/,
  },
  {
    title: 'bunched above 75',
    presses: [openSource],
    answer: (page) => page.locator('#at-the-limits'),
    says: /At the limits/,
  },
  {
    title: 'compare with the agency’s split',
    presses: [openSource],
    answer: line('Agency'),
    says: /split/,
  },
  {
    title: 'what if the criterion changed',
    presses: [openSource, follows('/what-if/')],
    answer: (page) => page.locator('main'),
    says: /no judgement under any contract/,
  },
  {
    title: 'file it',
    presses: [openSource, follows('/report/')],
    answer: (page) => page.locator('main h1').first(),
    says: /./,
  },
  {
    title: 'what is late',
    presses: [],
    answer: (page) => page.locator('[aria-labelledby="overdue"]'),
    says: /overdue/,
  },
  {
    title: 'export it',
    presses: [openSource],
    answer: (page) => page.locator('main a[href$=".csv"]').first(),
    says: /csv/,
  },
]

export interface Done {
  readonly title: string
  readonly presses: number
  readonly seconds: number
  /** Screens from the top to where the answer begins: below 1, it is in the first. */
  readonly screens: number
  readonly says: string
}

/** Does a task in a page that stands at the front. */
export async function done(page: Page, task: Task): Promise<Done> {
  const started = performance.now()
  for (const press of task.presses) {
    await press(page)
    await page.waitForLoadState('load')
  }
  const answer = task.answer(page)
  await answer.waitFor()
  const seconds = (performance.now() - started) / 1000
  const top = await answer.evaluate((element) => element.getBoundingClientRect().top / innerHeight)
  return {
    title: task.title,
    presses: task.presses.length,
    seconds,
    screens: top,
    says: ((await answer.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim(),
  }
}
