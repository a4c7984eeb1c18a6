/** Builds the demo's public site once, for all test files that read it. */
import { rmSync } from 'node:fs'
import { dirname } from 'node:path'
import type { TestProject } from 'vitest/node'
import { buildDemo } from './built-site.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the demo's public site: to be read, never written. */
    demoFolder: string
  }
}

/** @returns what removes the site again */
export default async function buildDemoOnce(project: TestProject): Promise<() => void> {
  const { folder } = await buildDemo()
  project.provide('demoFolder', folder)
  return () => rmSync(dirname(folder), { recursive: true })
}
