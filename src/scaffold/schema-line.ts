/**
 * The line that tells an editor the schema of a record. The schemas lie in the content folder itself: it then stands alone,
 * wherever it is copied and wherever the tool is installed.
 */
import type { RecordKind } from '../records/schema/schemas.ts'

/** Folder of the schemas in a content folder; its name begins with a point, so that no record is looked for there. */
export const SCHEMA_FOLDER = '.schemas'

/** @param path of the record below the content folder */
export function schemaLine(kind: RecordKind, path: string): string {
  const up = '../'.repeat(path.split('/').length - 1)
  return `# yaml-language-server: $schema=${up}${SCHEMA_FOLDER}/${kind}.json`
}
