/** Whatever tests lay out lies in one folder, which goes when they end. */
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** @returns takes the folder away */
export default function setUp(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'puteoli-tests-'))
  // Some commands run as a user who may do nothing, and is let in as into any temporary folder.
  chmodSync(folder, 0o1777)
  // Processes that run tests take it from here, as do the commands that they start.
  process.env['TMPDIR'] = folder
  return () => rmSync(folder, { recursive: true, force: true })
}
