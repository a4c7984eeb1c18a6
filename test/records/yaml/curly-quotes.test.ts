import { describe, expect, it } from 'vitest'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { fileReport } from '../../../src/records/diagnostics/report.ts'
import { isInCurlyQuotes } from '../../../src/records/yaml/curly-quotes.ts'

describe('isInCurlyQuotes', () => {
  const isCurly = (written: string) => {
    const diagnostics: Diagnostic[] = []
    return isInCurlyQuotes('“over the water”', '/a', fileReport('a.yaml', `a: ${written}\n`, diagnostics))
  }

  it('finds a value whose only quotes are curly', () => {
    expect(isCurly('“over the water”')).toBe(true)
  })
  it.each(['"“over the water”"', "'“over the water”'"])(
    'takes those within straight quotes for text: %s',
    (written) => {
      expect(isCurly(written)).toBe(false)
    },
  )
})
