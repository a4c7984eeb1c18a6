import { describe, expect, it } from 'vitest'
import { htmlTokens, linkedStyles } from './html-tokens.ts'

describe('htmlTokens', () => {
  it.each([
    [
      'the hash of an asset name',
      '<script src="/p/_astro/Chart.astro_lang.C9wzvsAx.js"></script>',
      '<script src="/p/_astro/Chart.astro_lang._d2kYB-b.js"></script>',
    ],
    ['order of attributes', '<td class="number" id="a">1</td>', '<td id="a" class="number">1</td>'],
    ['runs of white space in a text', '<p>meets  the\n limit</p>', '<p>meets the limit</p>'],
    ['white space beside block elements', '<ul> <li> one </li>\n</ul>', '<ul><li>one</li></ul>'],
    ['ids of scoped styles', '<b data-astro-cid-abcd1234>1</b>', '<b data-astro-cid-wxyz9876>1</b>'],
    [
      'which sheet holds the styles',
      '<link rel="stylesheet" href="/_astro/a.C9wzvsAx.css">',
      '<link rel="stylesheet" href="/_astro/b.C9wzvsAx.css">',
    ],
  ])('makes alike %s', (_, one, other) => {
    expect(htmlTokens(one)).toEqual(htmlTokens(other))
  })

  it.each([
    ['a changed word', '<p>meets the limit</p>', '<p>meets a limit</p>'],
    ['a changed digit', '<td>74.5</td>', '<td>74.6</td>'],
    ['a space between inline elements', '<b>a</b> <i>b</i>', '<b>a</b><i>b</i>'],
    ['the value of an attribute', '<a href="/a/">x</a>', '<a href="/b/">x</a>'],
    ['an attribute that is gone', '<option selected>x</option>', '<option>x</option>'],
    [
      'another script',
      '<script src="/_astro/a.C9wzvsAx.js"></script>',
      '<script src="/_astro/b.C9wzvsAx.js"></script>',
    ],
    ['a lost scope', '<b data-astro-cid-abcd1234>1</b>', '<b>1</b>'],
  ])('keeps apart %s', (_, one, other) => {
    expect(htmlTokens(one)).not.toEqual(htmlTokens(other))
  })

  it('reads a tag to its end although a value holds ">"', () => {
    expect(htmlTokens('<p title="a > b">c</p>')).toEqual(['<p title="a > b">', 'c', '</p>'])
  })
})

describe('linkedStyles', () => {
  it('gives the sheets of a page in order', () => {
    const link = (name: string) => `<link rel="stylesheet" href="/p/_astro/${name}.css">`
    expect(linkedStyles(`${link('b.12345678')}<link rel="icon" href="data:,">${link('a.12345678')}`)).toEqual(
      ['b.12345678.css', 'a.12345678.css'],
    )
  })
})
