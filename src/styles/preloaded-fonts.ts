/** The fonts that every page's first screen is set in: fetched at once, so that they are there for its first drawing. */
import body from 'source-sans/WOFF2/TTF/SourceSans3-Regular.ttf.woff2?url'
import bold from 'source-sans/WOFF2/TTF/SourceSans3-Semibold.ttf.woff2?url'
import heading from 'source-serif/WOFF2/TTF/SourceSerif4Display-Regular.ttf.woff2?url'

export const PRELOADED_FONTS: readonly string[] = [body, bold, heading]
