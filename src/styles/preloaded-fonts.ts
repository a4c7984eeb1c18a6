/** The fonts that every page's first screen is set in: fetched at once, so that they are there for its first drawing. */
import body from './fonts/body-400-text.woff2?url'
import bold from './fonts/body-600-text.woff2?url'
import heading from './fonts/heading-400-text.woff2?url'

export const PRELOADED_FONTS: readonly string[] = [body, bold, heading]
