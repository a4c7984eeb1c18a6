/** npm run compare: does the present tree still write what the program wrote at a commit? */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { readAllowances, sift, type Sifted } from './allowed.ts'
import { capture } from './capture.ts'
import type { Compared, Difference } from './difference.ts'
import { grouped, listed } from './listing.ts'
import { atEnd, endInOrder } from './processes.ts'
import { commitHash, KEPT, referenceResults } from './reference.ts'
import { resultDifferences } from './result-difference.ts'
import { WrongUse } from './wrong-use.ts'

const PROJECT = resolve(import.meta.dirname, '../..')
const EXIT = { alike: 0, different: 1, wrongUse: 2 } as const

const USAGE = `Usage: npm run compare -- COMMIT [--fresh] [--keep]
  --fresh  make the results of COMMIT anew instead of taking those of an earlier run
  --keep   keep the present results and print where they lie
`

const NOT_COMPARED = `Not compared: what scripts hold (only that they exist, by name), the order of style rules
and which sheet holds them, asset hashes, order of attributes, runs of white space, order of members in a JSON object.
`

endInOrder()
process.exitCode = await main()

async function main(): Promise<number> {
  try {
    const options = readOptions()
    const hash = commitHash(PROJECT, options.commit)
    const allowances = readAllowances(join(import.meta.dirname, 'allowed.json'))
    const was = await referenceResults(PROJECT, hash, options.fresh ? 'fresh' : 'kept')
    const is = await presentResults(options.keep)
    const compared = resultDifferences(was, is)
    return report(hash, compared, sift(compared.differences, allowances))
  } catch (error) {
    process.stderr.write(`${(error as Error).message}\n${error instanceof WrongUse ? USAGE : ''}`)
    return error instanceof WrongUse ? EXIT.wrongUse : EXIT.different
  }
}

/** @throws WrongUse */
function readOptions(): { commit: string; fresh: boolean; keep: boolean } {
  try {
    const flag = { type: 'boolean', default: false } as const
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { fresh: flag, keep: flag },
    })
    const [commit, ...others] = positionals
    if (commit === undefined || others.length > 0) throw new WrongUse('Name one commit to compare with.')
    return { commit, ...values }
  } catch (error) {
    throw new WrongUse((error as Error).message)
  }
}

async function presentResults(keep: boolean): Promise<string> {
  const folder = mkdtempSync(join(KEPT, 'present-'))
  if (keep) process.stderr.write(`The present results stay in ${folder}\n`)
  else atEnd(() => rmSync(folder, { recursive: true, force: true }))
  await capture(PROJECT, folder)
  return folder
}

function report(hash: string, compared: Compared, { unexpected, allowed, unused }: Sifted): number {
  const { reports, values, files } = compared
  const pieces = [
    ...(unexpected.length === 0 ? [] : [differencesText(hash, unexpected)]),
    ...unused.map(({ where, reason }) => `Allowed but not found, so it can go: ${where} (${reason})\n`),
    NOT_COMPARED,
    `${reports} reports, ${values} values and ${files} files compared with ${hash.slice(0, 10)}\n`,
    `${unexpected.length} differences, ${allowed.length} more allowed\n`,
  ]
  process.stdout.write(pieces.join(''))
  return unexpected.length === 0 ? EXIT.alike : EXIT.different
}

/** A summary to read, and a file with every difference. */
function differencesText(hash: string, differences: readonly Difference[]): string {
  const path = join(KEPT, `differences-from-${hash.slice(0, 10)}.txt`)
  writeFileSync(path, listed(differences))
  return `${grouped(differences)}\n\nA line for each difference: ${path}\n\n`
}
