import { describe, expect, it } from 'vitest'
import { diagnosticsExplained } from '../../../src/edition/views/diagnostics-explained.ts'
import { EXPLAINED_CODES } from '../../../src/records/diagnostics/explanations.ts'

describe('diagnosticsExplained()', () => {
  const families = diagnosticsExplained()
  const all = families.flatMap(({ diagnostics }) => diagnostics)

  it('shows every code once, each with an address of its own on the page', () => {
    expect(all.map(({ code }) => code).sort()).toEqual(Object.keys(EXPLAINED_CODES).sort())
    const ids = [...families.map(({ id }) => id), ...all.map(({ code }) => code)]
    expect(new Set(ids).size).toBe(ids.length)
  })
  it('names the file of an example, unless its name is the example', () => {
    const of = (code: string) => all.find((one) => one.code === code)?.example
    expect(of('quantity-unit')).toEqual({
      where: 'in lots/tuff/T-1.yaml',
      wrong: 'quantity: 1450',
      right: 'quantity: 1450 t',
    })
    expect(of('id-case')).toEqual({ where: '', wrong: 'producers/Hill.yaml', right: 'producers/moor.yaml' })
    expect(of('issued-altered')).toBeNull()
  })
})
