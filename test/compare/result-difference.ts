/** Differences between the results of the reference and of the present tree, run by run. */
import { join } from 'node:path'
import { captured } from './capture.ts'
import { type Compared, type Difference, together } from './difference.ts'
import { folderDifferences, textDifferences } from './folder-difference.ts'
import { jsonDifferences } from './json-difference.ts'
import { lanes, type Run } from './runs.ts'

/**
 * @param was folder with the results of the reference
 * @param is folder with the present results
 */
export function resultDifferences(was: string, is: string): Compared {
  return together(
    lanes('')
      .flat()
      .map((run) => runDifferences(run, was, is)),
  )
}

function runDifferences(run: Run, was: string, is: string): Compared {
  const label = run.name.replace('check ', 'check:')
  const [before, after] = [captured(run, was), captured(run, is)]
  const ending = [
    ...statusDifference(label, before.status, after.status),
    ...textDifferences(`${label}:standard error`, before.err.split('\n'), after.err.split('\n')),
  ]
  const output =
    run.output === 'report'
      ? { ...reportDifferences(label, before.out, after.out), reports: 1 }
      : lineDifferences(`${label}:standard output`, before.out, after.out)
  const files =
    run.folderLabel === null
      ? []
      : [folderDifferences(run.folderLabel, join(was, run.name), join(is, run.name))]
  return together([{ differences: ending, reports: 0, values: 0, files: 0 }, output, ...files])
}

function statusDifference(label: string, was: number, is: number): Difference[] {
  const where = `${label}:exit status`
  return was === is ? [] : [{ where, pattern: where, was: `${was}`, is: `${is}` }]
}

/** A present report that is not JSON is compared as text; its exit status says more. */
function reportDifferences(label: string, was: string, is: string): Compared {
  try {
    return jsonDifferences(label, JSON.parse(was), JSON.parse(is))
  } catch {
    return lineDifferences(`${label}:standard output`, was, is)
  }
}

function lineDifferences(where: string, was: string, is: string): Compared {
  return {
    differences: textDifferences(where, was.split('\n'), is.split('\n')),
    reports: 0,
    values: 0,
    files: 0,
  }
}
