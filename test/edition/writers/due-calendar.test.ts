import { describe, expect, it } from 'vitest'
import { calendarText } from '../../../src/edition/writers/calendar.ts'
import { dueCalendar } from '../../../src/edition/writers/due-calendar.ts'
import { plannedTest, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

/** Reads calendar data back after RFC 5545, sections 3.1 and 3.3.11, by other means than it is written. */
function parsed(text: string): Map<string, string>[] {
  const lines = text.split('\r\n')
  expect(lines.pop()).toBe('')
  for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
  const events: Map<string, string>[] = []
  for (const line of lines.join('\n').replaceAll('\n ', '').split('\n')) {
    const at = line.indexOf(':')
    const [name, value] = [line.slice(0, at), line.slice(at + 1)]
    if (line === 'BEGIN:VEVENT') events.push(new Map())
    else if (line !== 'END:VEVENT')
      events.at(-1)?.set(
        name,
        value.replace(/\\(.)/g, (_, sign: string) => (sign === 'n' ? '\n' : sign)),
      )
  }
  return events
}

const LONG = `${'a'.repeat(74)}ü€𝄞; b, c\\d\nnext`

describe('calendarText', () => {
  it('comes back whole, however long and whatever signs it holds, and cuts no character in two', () => {
    const text = calendarText(
      { name: 'n', url: null },
      [{ uid: 'u', day: '2026-04-22', summary: LONG, description: 'd' }],
      '2026-04-10',
    )
    expect(parsed(text)[0]?.get('SUMMARY')).toBe(LONG)
    expect(text).not.toContain('\ufffd')
  })
})

describe('dueCalendar', () => {
  const edition = (lots: readonly ReturnType<typeof tinyLot>[]) =>
    tinyEdition([tinySource('ash')], lots, {
      site: { title: 'Register', units: 'SI', criteria: [], grace: { value: 168 } } as never,
    })
  const lot = tinyLot('ash/A-1', {
    planned: [
      plannedTest('2026-04-22T09:00'),
      { ...plannedTest('2026-04-01', '2026-04-09'), condition: 'cool' },
    ],
  })
  it('has a whole day for each awaited result, in order, with the end of the grace', () => {
    const events = parsed(dueCalendar(edition([lot])) ?? '')
    expect(events.map((event) => [event.get('DTSTART;VALUE=DATE'), event.get('DESCRIPTION')])).toEqual([
      ['20260401', 'Overdue since 9 April 2026.'],
      // Seven days of grace after 22 April, 09:00.
      ['20260422', 'Awaited until 29 April 2026.'],
    ])
    expect(events[1]?.get('SUMMARY')).toBe('28 d strength activity index, modified (hot) of A-1 due')
    expect(dueCalendar(edition([lot]))).toContain('\r\nURL:https://example.org/a/due/\r\n')
    expect(events[1]?.get('URL')).toBe('https://example.org/a/lots/ash/A-1/')
    expect(events.map((event) => event.get('UID'))).toEqual([
      'ash/A-1/strength-activity-index/cool/28-d@example.org',
      'ash/A-1/strength-activity-index/hot/28-d@example.org',
    ])
  })
  it('is the same to the byte for the same day, and keeps its uids on another', () => {
    const [one, again] = [dueCalendar(edition([lot])), dueCalendar(edition([lot]))]
    expect(one).toBe(again)
  })
  it('does not exist where nothing is awaited, nor for a withdrawn lot', () => {
    expect(dueCalendar(edition([tinyLot('ash/A-1')]))).toBeNull()
    expect(dueCalendar(edition([{ ...lot, state: 'withdrawn' }]))).toBeNull()
  })
})
