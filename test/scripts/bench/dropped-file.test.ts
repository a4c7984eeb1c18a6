import { describe, expect, it } from 'vitest'
import { droppedFile, droppedText } from '../../../src/scripts/bench/dropped-file.ts'

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

describe('droppedFile', () => {
  const dropped = (name: string, ...parts: (Uint8Array<ArrayBuffer> | string)[]) =>
    droppedFile(new File(parts, name))

  it('reads text in UTF-8, with the mark at its start left off', async () => {
    expect(await dropped('A-1.yaml', '\ufeffsilo: Süd\n')).toEqual({ text: 'silo: Süd\n', lot: 'A-1' })
  })
  it.each([
    ['of an older encoding', new Uint8Array([0x63, 0x61, 0x66, 0xe9])],
    ['in UTF-16', new Uint8Array([0xff, 0xfe, 0x61, 0])],
    ['with bytes of nought', new Uint8Array([0x61, 0, 0x62])],
  ])('refuses a YAML file %s rather than lose a sign of it', async (_, bytes) => {
    expect(await dropped('A-1.yaml', bytes)).toEqual({
      fault: 'A-1.yaml is not text in UTF-8: save it so in your editor; the sheet is as it was',
    })
  })
  it('says of another file that it is no record, whatever it holds', async () => {
    expect(await dropped('photo.jpg', new Uint8Array([0xff, 0xd8, 0]))).toEqual({
      fault: 'photo.jpg is neither a lot’s YAML file nor the JSON file of a published lot',
    })
  })
  it('refuses what is larger than any lot before it is read', async () => {
    expect(await dropped('A-1.yaml', 'a'.repeat(4 * 1024 * 1024 + 1))).toEqual({
      fault: 'A-1.yaml is larger than any lot; the sheet is as it was',
    })
  })
})
