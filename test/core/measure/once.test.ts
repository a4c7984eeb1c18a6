import { expect, it } from 'vitest'
import { once } from '../../../src/core/measure/once.ts'

it('once makes a value when it is first asked for, and never again', () => {
  let made = 0
  const value = once(() => {
    made += 1
    return undefined
  })
  expect(made).toBe(0)
  expect([value(), value(), made]).toEqual([undefined, undefined, 1])
})
