/** Some thousands of spoiled records, always the same; npm run torture goes on where this ends. */
import { describe, expect, it } from 'vitest'
import { caseRunner, type ReadingKind } from './kinds.ts'
import { oddRequests } from './odd-requests.ts'

const SEED = 20_260_411

/** Faults of the first cases, each with its number, so that it can be run alone. */
function faultsOf(kind: ReadingKind, cases: number): string[] {
  const run = caseRunner(kind)
  return Array.from({ length: cases }, (_, number) =>
    run(SEED, number).map((fault) => `--only ${kind} --seed ${SEED} --case ${number}: ${fault}`),
  ).flat()
}

describe('a spoiled record', () => {
  it('gives a record or diagnostics with place and fix, never an exception and never nothing', () => {
    expect(faultsOf('readers', 3000)).toEqual([])
  })
  it('does not keep the others from being computed, reported, published, drawn and issued', () => {
    expect(faultsOf('whole-way', 100)).toEqual([])
  })
})

describe('a spoiled document whose digest is on record', () => {
  it('is told or read, never a trace', () => {
    expect(faultsOf('documents', 40)).toEqual([])
  })
})

describe('an odd request', () => {
  it('is answered, leads nowhere else, and the server goes on', async () => {
    for (let number = 0; number < 150; number += 1)
      expect(await oddRequests(SEED, number), `${number}`).toEqual([])
  })
})
