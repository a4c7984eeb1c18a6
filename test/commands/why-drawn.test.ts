import { expect, it } from 'vitest'
import { drawnLines, firstToTell } from '../../src/commands/why-drawn.ts'

it('every file that was made again is told of, under the records that changed', () => {
  const changed = [
    'site',
    'lot ash/1',
    'lot ash/1',
    'criteria/c618',
    'shipmentsOf/ash',
    'controls/NQ-1',
    '',
    'asked listing ash',
    'made check lots',
  ]
  expect(drawnLines({ all: 9, made: 8 }, { all: 3, made: 1 }, changed)).toEqual([
    '9 pages: 8 drawn, 1 unchanged',
    '3 data files: 1 made, 2 unchanged',
    'Files made anew because of a change in site.yaml (1), lots and what they rest on (2), criteria (1), shipments (1), control batches and what they rest on (1), the program, the address or a method page (1), what is taken from other records (2)',
  ])
  expect(drawnLines({ all: 9, made: 0 }, { all: 3, made: 0 }, [])).toHaveLength(2)
})

it('a change in site.yaml, on which all else rests, is told as one in site.yaml', () => {
  const told = (isChanged: (dependency: string) => boolean) =>
    firstToTell(['criteria', 'laboratory north', 'lot ash/1', 'site', 'asOf'], isChanged)
  expect(told((dependency) => dependency !== 'criteria')).toBe('site')
  expect(told((dependency) => dependency.includes(' '))).toBe('laboratory north')
  expect(told(() => false)).toBeUndefined()
  // A batch rests on the site and on sources as a lot does.
  const batch = ['controls/NQ-1', 'controls', 'sources']
  expect(firstToTell(batch, () => true)).toBe('sources')
  expect(firstToTell(batch, (dependency) => dependency !== 'sources')).toBe('controls/NQ-1')
})
