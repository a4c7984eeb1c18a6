/** What the frame of a page prints, as plain data: a page that hands this on needs nothing else of the Edition. */
import { defined } from '../../core/measure/defined.ts'
import type { Moment } from '../../core/measure/moment.ts'
import type { Edition } from './edition.ts'

export interface Frame extends Pick<Edition, 'address' | 'audience' | 'program'> {
  readonly site: Pick<Edition['site'], 'title' | 'notice'>
  /** The day of the records; null on a page that would say the same on any later day. */
  readonly asOf: Moment | null
}

export function frameOf(edition: Edition, asOf: Frame['asOf']): Frame {
  const { site, address, audience, program } = edition
  return {
    site: { title: site.title, ...defined({ notice: site.notice }) },
    address,
    audience,
    program,
    asOf,
  }
}
