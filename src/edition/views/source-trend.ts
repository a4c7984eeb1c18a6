/** Whether the governing results of a source rise or fall over its lots: a change with its interval, or none. */
import { plain, type Said, strong } from '../../words/said.ts'
import type { StripInput } from './source-strip.ts'

/** Until slopes are computed the line says so. */
export function trendSaid(_: Pick<StripInput, 'source'>): { says: Said[]; rest: Said[] } {
  return { says: [strong('none shown')], rest: [plain('No slope has been computed.')] }
}
