/** Calendar data as RFC 5545 wants it: escaped, folded, with CRLF. */

import type { Edition } from '../shape/edition.ts'

/** Octets on a line at most, its break left out. Source: RFC 5545, section 3.1. */
const OCTETS = 75

/** One event of a whole day. */
export interface DayEvent {
  readonly uid: string
  /** "2026-04-22" */
  readonly day: string
  readonly summary: string
  readonly description: string
  /** Full address; absent where the site has none. */
  readonly url?: string
}

/**
 * A calendar of whole days.
 * @param events at least one, each with a uid of its own: RFC 5545, section 3.6, admits no empty calendar
 * @param name of the calendar, and the full address of the page that shows the same where the site has one
 * @param stamp the day that the calendar was made of, "2026-04-10": same records, same bytes
 * Source: RFC 5545, sections 3.4, 3.6.1, 3.8.7.2; RFC 7986, sections 5.1 and 5.5 (NAME, URL).
 */
export function calendarText(
  { name, url }: { readonly name: string; readonly url: string | null },
  events: readonly DayEvent[],
  stamp: string,
): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Puteoli//Results due//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${escaped(name)}`,
    ...(url === null ? [] : [`URL:${url}`]),
    ...events.flatMap((event) => eventLines(event, compact(stamp))),
    'END:VCALENDAR',
  ]
  return lines.map((line) => `${folded(line)}\r\n`).join('')
}

/** What makes uids the site's own; a site without an address has none to name. */
export function calendarHost({ address }: Pick<Edition, 'address'>): string {
  return address.origin === null ? 'puteoli.invalid' : new URL(address.origin).host
}

function eventLines({ uid, day, summary, description, url }: DayEvent, stamp: string): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stamp}T000000Z`,
    `DTSTART;VALUE=DATE:${compact(day)}`,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    ...(url === undefined ? [] : [`URL:${url}`]),
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ]
}

function compact(day: string): string {
  return day.replaceAll('-', '')
}

/** Source: RFC 5545, section 3.3.11: backslash, semicolon, comma and line break are escaped. */
function escaped(text: string): string {
  return text.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r\n|\r|\n/g, '\\n')
}

/** A long line goes on after a break and a space; no character is cut in two. */
function folded(line: string): string {
  const parts: string[] = []
  let part = ''
  let octets = 0
  for (const sign of line) {
    const size = Buffer.byteLength(sign)
    if (OCTETS < octets + size) {
      parts.push(part)
      // The space that begins the next line counts.
      part = ''
      octets = 1
    }
    part += sign
    octets += size
  }
  return [...parts, part].join('\r\n ')
}
