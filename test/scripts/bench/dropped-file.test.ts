import { describe, expect, it } from 'vitest'
import { droppedText } from '../../../src/scripts/bench/dropped-file.ts'

describe('droppedText', () => {
  it('takes a YAML file as it is, with the lot that its name says', () => {
    expect(droppedText('A-1.yaml', 'quantity: 1 t # wet\n')).toEqual({
      text: 'quantity: 1 t # wet\n',
      lot: 'A-1',
    })
    expect(droppedText('my lot (2).yml', 'a: b')).toEqual({ text: 'a: b' })
  })

  it('knows a control batch by its casting', () => {
    const text = 'condition: c311\ncast: 2026-03-11\n'
    expect(droppedText('K-1.yaml', text)).toEqual({ control: 'K-1', text })
  })

  it('takes the record out of a published lot', () => {
    const data = JSON.stringify({
      id: 'ash/A-1',
      record: { samples: [{ id: 'C', kind: 'grab' }], quantity: '1 t' },
    })
    expect(droppedText('A-1.json', data)).toEqual({
      text: 'quantity: 1 t\nsamples:\n  - { id: C, kind: grab }\n',
      source: 'ash',
      lot: 'A-1',
    })
  })

  it.each([
    ['A-1.json', '{"id": "ash/A-1"}', 'does not hold the record'],
    ['A-1.json', 'no', 'is not JSON'],
    ['A-1.pdf', '', 'is neither'],
  ])('refuses %s with %j', (name, text, why) => {
    expect(droppedText(name, text)).toEqual({ fault: expect.stringContaining(why) })
  })
})
