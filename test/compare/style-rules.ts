/** The rules of a style sheet in sorted order, each with the at-rules it lies in. */
import { withoutHashes } from './asset-names.ts'

/** At-rules that hold rules; any other block, such as @font-face or a plain rule, stays whole. */
const HOLDS_RULES = /^@(media|supports|layer|container)\b/

/**
 * @param css minified or plain; comments are dropped
 * @returns rules such as "@media print{ a{color:red}", sorted; their order in the sheet is not kept
 */
export function styleRules(css: string): string[] {
  return rulesIn(withoutHashes(css.replaceAll(/\/\*[\s\S]*?\*\//g, '')), '').sort()
}

function rulesIn(css: string, around: string): string[] {
  return blocksOf(css).flatMap(({ head, body }) => {
    if (body === null) return [`${around}${head}`]
    return HOLDS_RULES.test(head) ? rulesIn(body, `${around}${head}{ `) : [`${around}${head}{${alike(body)}}`]
  })
}

/** The top-level statements: a head with its braced body, or a statement that ends in a semicolon. */
function blocksOf(css: string): { head: string; body: string | null }[] {
  const blocks: { head: string; body: string | null }[] = []
  let [start, open, depth] = [0, 0, 0]
  for (let place = 0; place < css.length; place += 1) {
    const sign = css[place]
    if (sign === '{') {
      if (depth === 0) open = place
      depth += 1
    } else if (sign === '}' && depth === 1)
      blocks.push({ head: alike(css.slice(start, open)), body: css.slice(open + 1, place) })
    if (sign === '}') depth -= 1
    if (depth === 0 && sign === ';') blocks.push({ head: alike(css.slice(start, place)), body: null })
    if (depth === 0 && (sign === '}' || sign === ';')) start = place + 1
  }
  const rest = alike(css.slice(start))
  return rest === '' ? blocks : [...blocks, { head: rest, body: null }]
}

/** Single spaces, and one id for all scoped styles. */
function alike(text: string): string {
  return text
    .trim()
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/data-astro-cid-\w+/g, 'data-astro-cid')
}
