/** Whatever tests lay out lies in one folder, which goes when they end. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** @returns takes the folder away */
export default function setUp(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'puteoli-tests-'))
  // Processes that run tests take it from here, as do the commands that they start.
  process.env['TMPDIR'] = folder
  return () => rmSync(folder, { recursive: true, force: true })
}
