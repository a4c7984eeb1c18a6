import { expect, it } from 'vitest'
import { everyClauseOutcome } from '../../../src/core/criteria/verdict.ts'

interface Node {
  readonly id: string
  readonly clauses?: readonly Node[]
}

it('everyClauseOutcome gives a group before its members, at any depth, in reading order', () => {
  const tree: Node[] = [
    {
      id: 'a',
      clauses: [
        { id: 'b', clauses: [{ id: 'c' }] },
        { id: 'd', clauses: [] },
      ],
    },
    { id: 'e' },
  ]
  expect([...everyClauseOutcome(tree)].map(({ id }) => id)).toEqual(['a', 'b', 'c', 'd', 'e'])
  expect([...everyClauseOutcome<Node>([])]).toEqual([])
})
