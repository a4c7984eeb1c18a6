/** A page as a list of tags and texts, without what may change although a reader sees and hears the same. */
import { withoutHashes } from './asset-names.ts'

/** A comment; a tag, whose quoted values may hold ">"; a text. */
const TOKEN = /<!--[\s\S]*?-->|<(?:[^<>"']|"[^"]*"|'[^']*')*>|[^<]+|</g

/** Name and value of an attribute; the value keeps its quotes. */
const ATTRIBUTE = /([^\s=>"'/]+)(?:\s*=\s*("[^"]*"|'[^']*'|[^\s>"']+))?/g

/** White space beside the tags of these elements is never drawn. */
const BLOCKS = new Set(
  (
    'html head body meta link title base script template header footer nav main article section aside div ' +
    'p h1 h2 h3 h4 h5 h6 ul ol li dl dt dd table caption colgroup col thead tbody tfoot tr td th figure ' +
    'figcaption form fieldset legend details summary option optgroup hr br pre blockquote ' +
    'g path circle line rect polyline polygon defs desc pattern marker clippath'
  ).split(' '),
)

/**
 * 1. Asset names lose their content hash; links to style sheets are left out, rules are compared instead.
 * 2. Attributes are sorted by name; scoped-style attributes (data-astro-cid-...) are one and the same.
 * 3. Runs of white space in a text are one space, and none beside block elements.
 */
export function htmlTokens(html: string): string[] {
  const tokens = [...html.matchAll(TOKEN)]
    .map(([token]) => (token.startsWith('<') ? tagAlike(token) : token))
    .filter((token) => !isStyleLink(token))
  return tokens
    .map((token, place) =>
      token.startsWith('<') ? token : textAlike(token, tokens[place - 1], tokens[place + 1]),
    )
    .filter((token) => token !== '')
}

/** File names, without "_astro/", of the style sheets that a page links to, in order. */
export function linkedStyles(html: string): string[] {
  return [...html.matchAll(TOKEN)]
    .map(([token]) => token)
    .filter(isStyleLink)
    .flatMap((token) => /_astro\/([^"'\s>]+)/.exec(token)?.[1] ?? [])
}

function isStyleLink(token: string): boolean {
  return /^<link\s/.test(token) && /\srel=["']?stylesheet\b/.test(token)
}

function tagAlike(tag: string): string {
  const [, head, rest] = /^<([a-zA-Z][^\s/>]*)([\s\S]*)>$/.exec(tag) ?? []
  if (head === undefined || rest === undefined) return tag
  const attributes = [...rest.matchAll(ATTRIBUTE)].map(([, name = '', value]) => attributeAlike(name, value))
  return `<${[head, ...[...new Set(attributes)].sort()].join(' ')}>`
}

function attributeAlike(name: string, value: string | undefined): string {
  if (name.startsWith('data-astro-cid-')) return 'data-astro-cid'
  if (value === undefined) return name
  const bare = /^["']/.test(value) ? value.slice(1, -1) : value
  return `${name}="${name === 'class' ? bare.trim().replaceAll(/\s+/g, ' ') : withoutHashes(bare)}"`
}

function textAlike(text: string, before: string | undefined, after: string | undefined): string {
  const single = text.replaceAll(/\s+/g, ' ')
  const start = isBlock(before) ? single.trimStart() : single
  return isBlock(after) ? start.trimEnd() : start
}

/** The start and the end of the page count as block elements. */
function isBlock(tag: string | undefined): boolean {
  return tag === undefined || BLOCKS.has(/^<\/?([^\s>]+)/.exec(tag)?.[1]?.toLowerCase() ?? '')
}
