/** What the program of each tree is made to do. */
import { join } from 'node:path'

/** Raised whenever the runs below change, so that no older result is taken for a reference. */
export const RUNS_VERSION = 1

export interface Run {
  /** Its result lies under this name: NAME.out, NAME.err, NAME.status, and a folder NAME if it writes one. */
  readonly name: string
  /** What standard output is: one JSON report, or plain lines. */
  readonly output: 'report' | 'lines'
  /** Put before the files of the folder that the run writes; null if it writes none. */
  readonly folderLabel: string | null
  /** An npm script and its arguments. */
  readonly script: readonly string[]
}

/** Spread over the demo's span; the last is the as-of date of its site.yaml. */
const AS_OF = ['2023-12-31', '2024-09-15', '2025-06-30', '2026-03-31', '2026-04-10']

/** With an address a build holds QR codes, feed and sitemap. */
const ADDRESS = 'https://example.org/pozzolans/'

const GENERATED_LOTS = 1000

/** @returns lanes that may run side by side; within a lane one run after another */
export function lanes(folder: string): Run[][] {
  const generated = join(folder, 'generated')
  const checks = AS_OF.map((date) => check(`demo@${date}`, '--as-of', date))
  const demo: Run = {
    name: 'generated',
    output: 'lines',
    folderLabel: 'generated',
    script: ['demo', '--lots', `${GENERATED_LOTS}`, '--out', generated],
  }
  return [
    [...checks, demo, check('generated lots', '--content', generated)],
    [build(folder, 'site', 'public'), build(folder, 'internal', 'internal')],
  ]
}

function check(name: string, ...options: string[]): Run {
  return {
    name: `check ${name}`,
    output: 'report',
    folderLabel: null,
    script: ['check', '--json', ...options],
  }
}

function build(folder: string, name: string, audience: string): Run {
  return {
    name,
    output: 'lines',
    folderLabel: name,
    script: ['build', '--out', join(folder, name), '--address', ADDRESS, '--audience', audience],
  }
}
