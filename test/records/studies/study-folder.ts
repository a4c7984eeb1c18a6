/** A sound content folder with studies added, for tests that read what a writer wrote. */
import { cpSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { loadRecords } from '../../../src/records/load.ts'

const BASE = resolve(import.meta.dirname, '../../diagnostics/base')

/** Two materials, one condition, one laboratory: what a reading need not say, it does not. */
export const STUDY = `title: Which condition separates?
kind: screening
question: Which?
by: laboratory
plan: { fixed: 2026-01-01, threshold: { strength-activity-index: 5 %, resistivity-index: 50 % }, digest: sha256-c575c6a95e166053bdcaef0d67e519521d3a8443ce0218b608a7ae0d3b6aa537 }
materials:
  Q1: { title: quartz, class: inert, shown-by: heat }
  A1: { title: ash, class: reactive, shown-by: heat }
conditions:
  R30: { replacement: 30 % }
`

/** @param files as text, by their paths from studies/ */
export function loadStudies(files: Readonly<Record<string, string>>) {
  const content = mkdtempSync(join(tmpdir(), 'studies-'))
  cpSync(BASE, content, { recursive: true })
  mkdirSync(join(content, 'studies'), { recursive: true })
  for (const [name, text] of Object.entries(files)) writeFileSync(join(content, 'studies', name), text)
  return loadRecords(content)
}
