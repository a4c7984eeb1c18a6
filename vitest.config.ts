import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

// What Node makes of modules is kept by their text: commands start some hundred times, and so do their tests.
process.env['NODE_COMPILE_CACHE'] ??= join(tmpdir(), 'puteoli-tests-compiled')

/** Tests that change what a process shares: its modules, its environment, its folder. */
const OF_THEIR_OWN = ['test/commands/**/*.test.ts', 'test/records/issued/list-issued.test.ts']
/** Tests of the built site share one build of the demo and one browser. */
const SITE = ['test/site/**/*.test.ts']

/**
 * Begun last, each of them would run on one processor while the other is idle. Those of the site come as they may: beside
 * the rules of accessibility fonts come too late.
 */
const LONGEST = /\/(?:types|rests-on)\.test\.ts$/

/** The longest of each project first; all others as they come. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const byProject = Map.groupBy(await super.sort(files), ({ project }) => project.name)
    return [...byProject.values()].flatMap((own) =>
      own.toSorted((a, b) => Number(LONGEST.test(b.moduleId)) - Number(LONGEST.test(a.moduleId))),
    )
  }
}

export default defineConfig({
  test: {
    globalSetup: ['test/own-folder.ts'],
    sequence: { sequencer: LongestFirst },
    // The runner would leave one processor idle, which on two of them doubles the time.
    maxWorkers: '100%',
    testTimeout: 120_000,
    hookTimeout: 240_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'functions',
          include: ['test/**/*.test.ts'],
          exclude: [...OF_THEIR_OWN, ...SITE],
          // Each module is read once for all files: half of the time went there.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'processes', include: OF_THEIR_OWN } },
      {
        extends: true,
        test: {
          name: 'site',
          include: SITE,
          globalSetup: ['test/site/demo-and-browser.ts'],
          // Each process computes the demo and connects to the browser once, for all its files.
          isolate: false,
        },
      },
    ],
  },
})
