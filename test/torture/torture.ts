/**
 * npm run torture -- [--minutes N] [--only KIND ...] [--seed S] [--case N] [--fresh]: tortures the program for as
 * long as it is told, going on where the last run ended. Prints counts of each kind, and how to see each fault again;
 * ends with status 1 where there was one.
 */
import { parseArgs } from 'node:util'
import { caseRunner, describeCase, READING_KINDS, type ReadingKind } from './kinds.ts'
import { editedAgain } from './edited-site.ts'
import { killedBuild, killedIssue, twoAtOnce } from './kills.ts'
import { killsSoFar } from './run-command.ts'
import { readingSlice } from './reading-slice.ts'
import { oddRequests } from './odd-requests.ts'
import { addFaults, newState, readState, type TortureState, writeState } from './torture-state.ts'

/** One case of a kind that runs other processes. */
type RunAlone = (seed: number, number: number) => Promise<readonly string[]>

const ALONE: Readonly<Record<string, RunAlone>> = {
  'kills-of-issue': killedIssue,
  'kills-of-build': killedBuild,
  'two-at-once': twoAtOnce,
  'edited-site': editedAgain,
  requests: oddRequests,
}
const KINDS: readonly string[] = [...READING_KINDS, ...Object.keys(ALONE)]

/** Seconds of one turn of each kind: reading costs little, so that its share is smaller than that of kills. */
const TURN: Readonly<Record<string, number>> = { readers: 60, 'whole-way': 30, documents: 20, requests: 3 }
const TURN_ALONE = 45

const USAGE = `npm run torture -- [options]
  --minutes N   how long, 30 by default; it goes on where the last run ended
  --only KIND   one kind alone, several times for several: ${KINDS.join(', ')}
  --seed S      another sequence of cases
  --case N      show one case, with its faults: --only KIND --seed S --case N
  --fresh       begin again from the first case
`

const { values } = readArguments()
if (values.help) {
  process.stdout.write(USAGE)
  process.exit(0)
}
const minutes = Number(values.minutes)
const unknown = values.only.filter((kind) => !KINDS.includes(kind))
if (unknown.length > 0 || !Number.isFinite(minutes) || minutes <= 0) {
  process.stderr.write(`Give --minutes a number above 0, and --only one of ${KINDS.join(', ')}.\n`)
  process.exit(2)
}
const seed = values.seed === undefined ? undefined : Number(values.seed)
if (values.case === undefined) await torture()
else await oneCase(values.only[0] ?? 'readers', seed ?? 1, Number(values.case))

function readArguments() {
  try {
    return parseArgs({
      options: {
        minutes: { type: 'string', default: '30' },
        only: { type: 'string', multiple: true, default: [...KINDS] },
        seed: { type: 'string' },
        case: { type: 'string' },
        fresh: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    })
  } catch (fault) {
    process.stderr.write(`${(fault as Error).message}\n${USAGE}`)
    process.exit(2)
  }
}

/** Shows one case, with its faults. */
async function oneCase(kind: string, of: number, number: number): Promise<void> {
  const alone = ALONE[kind]
  const faults = alone === undefined ? caseRunner(kind as ReadingKind)(of, number) : await alone(of, number)
  if (alone === undefined) process.stdout.write(describeCase(kind as ReadingKind, of, number))
  process.stdout.write(
    faults.length === 0 ? 'No fault.\n' : faults.map((fault) => `fault: ${fault}\n`).join(''),
  )
  process.exitCode = faults.length === 0 ? 0 : 1
}

async function torture(): Promise<void> {
  const state = values.fresh ? newState(seed ?? 1) : readState(seed)
  const begun = { ...state.next }
  const before = { ...state.faultCounts }
  process.stdout.write(`Seed ${state.seed}, ${minutes} minutes; going on at ${JSON.stringify(state.next)}\n`)
  const until = performance.now() + minutes * 60_000
  while (performance.now() < until)
    for (const kind of values.only) {
      const left = (until - performance.now()) / 1000
      if (left <= 0) break
      await turn(state, kind, Math.min(left, TURN[kind] ?? TURN_ALONE))
      writeState(state)
    }
  summary(state, begun, before)
}

async function turn(state: TortureState, kind: string, seconds: number): Promise<void> {
  const alone = ALONE[kind]
  const from = state.next[kind] ?? 0
  if (alone === undefined) {
    const slice = await readingSlice({ kind: kind as ReadingKind, seed: state.seed, from }, seconds)
    state.next[kind] = slice.next
    for (const { number, faults } of slice.found) take(state, kind, number, faults)
    return
  }
  const until = performance.now() + seconds * 1000
  for (let number = from; performance.now() < until; number += 1) {
    state.next[kind] = number + 1
    const before = killsSoFar()
    take(state, kind, number, await alone(state.seed, number))
    state.kills += killsSoFar() - before
  }
}

function take(state: TortureState, kind: string, number: number, faults: readonly string[]): void {
  if (!addFaults(state, kind, number, faults)) return
  const again = `npm run torture -- --only ${kind} --seed ${state.seed} --case ${number}`
  process.stdout.write(`${kind} ${number}: ${faults.join('; ')}\n  to see it again: ${again}\n`)
}

function summary(state: TortureState, begun: Record<string, number>, before: Record<string, number>): void {
  const rows = values.only.map((kind) => {
    const [all, faults] = [state.next[kind] ?? 0, state.faultCounts[kind] ?? 0]
    return `${kind}: ${all - (begun[kind] ?? 0)} cases and ${faults - (before[kind] ?? 0)} faults in this run; ${all} and ${faults} in all`
  })
  process.stdout.write(`${rows.join('\n')}\n${killsSoFar()} kills in this run, ${state.kills} in all\n`)
  if (values.only.some((kind) => (state.faultCounts[kind] ?? 0) > (before[kind] ?? 0))) process.exitCode = 1
}
