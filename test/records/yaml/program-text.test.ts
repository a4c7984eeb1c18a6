import { describe, expect, it } from 'vitest'
import { programTextIn } from '../../../src/records/yaml/program-text.ts'

function linesRefused(text: string): number[] {
  return programTextIn(text.split('\n'), 1).map((fault) => fault.line)
}

describe('programTextIn', () => {
  it('refuses import, export, braces and tags, at their column', () => {
    expect(
      programTextIn(['Plain.', '  export const x = 1', 'a {b}', 'c <Part/>'], 7).map(({ line, column }) => [
        line,
        column,
      ]),
    ).toEqual([
      [8, 1],
      [9, 3],
      [10, 3],
    ])
  })
  it('accepts prose with a bound, an arrow and code without braces', () => {
    expect(
      linesRefused('A residue < 12 %, `<0.1 %`, a <= b.\n\nAn important exporter -> `index = 100 A/B`.'),
    ).toEqual([])
  })
  it('accepts anything inside a code block, and nothing after its end', () => {
    expect(linesRefused('```yaml\n{ mass: 24.8 t }\n```\n{1}')).toEqual([4])
    expect(linesRefused('````\n```\n{1}\n```\n````\n')).toEqual([])
  })

  // Each of these was seen to run in a built page while a reader of single lines took the expression for
  // code.
  it.each([
    ['marks of another kind inside a block', '```\n~~~\n```\n\nA {1} b'],
    ['an escaped mark', 'a \\` {1} \\`'],
    ['a mark in the block’s first line', '```a`\n\nA {1} b'],
    ['a block that ends with its list', '- a\n\n  ```\n  code\n\nA {1} b'],
    ['a mark whose partner is on the line before', 'a ` b\nc ` {1} ` d'],
    ['a mark within an address', '[x](`) {1} `'],
  ])('is not misled by %s', (_what, text) => {
    expect(linesRefused(text).length).toBeGreaterThan(0)
  })
  it('refuses a second heading, which could name a layout', () => {
    expect(linesRefused('\n---\nlayout: x\n---\n')).toEqual([2])
    expect(linesRefused('+++\nlayout = "x"\n+++\n')).toEqual([1])
    expect(linesRefused('Text.\n\n---\n\nMore after a rule.')).toEqual([])
  })
  it('refuses a carriage return within a line, where Markdown begins a new one', () => {
    expect(linesRefused('a\rexport const x = 1')).toEqual([1])
  })
})
