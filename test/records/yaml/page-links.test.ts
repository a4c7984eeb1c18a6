import { describe, expect, it } from 'vitest'
import { wrongLinksIn } from '../../../src/records/yaml/page-links.ts'

const faults = (text: string) => wrongLinksIn(text.split('\n'), 1).map(({ line, column }) => [line, column])

describe('wrongLinksIn', () => {
  it.each([
    '[a](https://example.org/x:y?z=1&w=2)',
    '[a](HTTP://example.org)',
    '[a](mailto:a@example.org)',
    '[a](../lots/x/)',
    '[a](/lots/x:y?a=1&b=c:d "title")',
    '[a](#part)',
    '[a](<a b>)',
    '[a]: https://example.org',
    '![a [b] c](/x.png)',
    'an [aside] of words',
  ])('lets %s through', (text) => {
    expect(faults(text)).toEqual([])
  })
  it.each([
    ['[a](javascript:x)', 5],
    ['[a]( JavaScript:x)', 6],
    ['[a](<javascript:x>)', 6],
    ['[a](data:text/html,x)', 5],
    ['[a](java&#115;cript:x)', 5],
    ['[a](javascript&colon;x)', 5],
    ['[a](javascript\\:x)', 5],
    ['[a](//example.org)', 5],
    ['[a](/&#47;example.org)', 5],
    ['[a](/\\example.org)', 5],
    ['[a]: javascript:x', 6],
    ['![a](https://example.org/x.png)', 1],
    ['![a](//example.org/x.png)', 1],
    ['![a](data:image/png;base64,x)', 1],
    ['![a](x.png)', 1],
    ['![a](../x.png)', 1],
    ['![a][b]', 1],
    ['![a]', 1],
  ])('refuses %s at its column', (text, column) => {
    // An image is a link as well, and is told once by each rule that it breaks.
    expect(faults(text)[0]).toEqual([1, column])
  })
  it('finds an address on the line after its bracket', () => {
    expect(faults('x\n[a](\n  vbscript:x)')).toEqual([[3, 3]])
  })
})
