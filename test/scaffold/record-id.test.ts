import { describe, expect, it } from 'vitest'
import { idFault, idFor, lotNameFault } from '../../src/scaffold/record-id.ts'

describe('idFor', () => {
  it.each([
    ['Fly ash, unit 2', 'fly-ash-unit-2'],
    ['Müller & Söhne', 'muller-sohne'],
    ['火山灰', 'otherwise'],
    ['<your company>', 'otherwise'],
    ['nul', 'otherwise'],
    [`${'a'.repeat(63)} b`, 'a'.repeat(63)],
  ])('makes of %s %s', (name, id) => {
    expect(idFor(name, 'otherwise')).toBe(id)
  })
})

describe('idFault', () => {
  it.each(['', 'a b', '../a', 'a/b', '-a', 'con', 'a'.repeat(65)])('refuses "%s"', (id) => {
    expect(idFault('source', id)?.message).toMatch(/not a valid id/)
  })
  it('refuses for a criterion what is a page of a source', () => {
    expect(idFault('criterion', 'what-if')?.mend).toBe('give the file another name')
    expect(idFault('source', 'what-if')).toBeUndefined()
  })
})

describe('lotNameFault', () => {
  it.each(['2026', 'Report', 'parts', 'shipments', 'A 1', 'A/1', ''])('refuses "%s"', (name) => {
    expect(lotNameFault(name)?.message).toMatch(/not a valid id/)
  })
  it('takes a lot number', () => {
    expect(lotNameFault('FA-2026-001')).toBeUndefined()
  })
})
