import { describe, expect, it } from 'vitest'
import { above, below, lastKey, pointerTo } from '../../../src/records/yaml/pointer.ts'

describe('pointerTo', () => {
  it('escapes each key of a path', () => {
    expect(pointerTo(['tests', 0, 'a/b'])).toBe('/tests/0/a~1b')
    expect(pointerTo([])).toBe('')
  })
})

describe('below', () => {
  // RFC 6901, section 5: the pointers of the example document.
  it.each([
    ['foo', '/foo'],
    ['', '/'],
    ['a/b', '/a~1b'],
    ['m~n', '/m~0n'],
    ['c%d', '/c%d'],
    [0, '/0'],
  ])('points to the member %j of a record by %s', (key, pointer) => {
    expect(below('', key)).toBe(pointer)
  })
  it('escapes the tilde before the slash, so that both can be told apart again', () => {
    expect(below('/a', '~1/')).toBe('/a/~01~1')
  })
})

describe('above', () => {
  it.each([
    ['/a/b~1c/0', '/a/b~1c'],
    ['/a', ''],
    ['', ''],
  ])('takes the last step off %j', (pointer, expected) => {
    expect(above(pointer)).toBe(expected)
  })
})

describe('lastKey', () => {
  it.each(['foo', '', 'a/b', 'm~n', 'c%d', '~1/'])('gives back the member %j of a record', (key) => {
    expect(lastKey(below('/a', key))).toBe(key)
  })
  it('is empty for the record itself', () => {
    expect(lastKey('')).toBe('')
  })
})
