import { expect, it } from 'vitest'
import { methodList } from '../../../src/edition/views/method-list.ts'
import { tinyEdition } from '../tiny-edition.ts'

const method = (id: string, order: number) => ({ id, title: id, summary: `on ${id}`, order, body: '' })

it('methodList goes by order, then by id, and leaves the edition as it is', () => {
  const edition = tinyEdition([], [], { methods: [method('b', 2), method('c', 1), method('a', 2)] as never })
  expect(methodList(edition)).toEqual([
    { title: 'c', href: '/a/methods/c/', summary: 'on c' },
    { title: 'a', href: '/a/methods/a/', summary: 'on a' },
    { title: 'b', href: '/a/methods/b/', summary: 'on b' },
  ])
  expect(edition.methods.map(({ id }) => id)).toEqual(['b', 'c', 'a'])
})
