/** What a document calls the conditions and laboratories that its results name by id. */
import type { CertificateDocument } from '../shape/document.ts'

export type DocumentCondition = CertificateDocument['conditions'][number]

export function conditionIn(
  { conditions }: Pick<CertificateDocument, 'conditions'>,
  id: string | undefined,
): DocumentCondition | undefined {
  return conditions.find((condition) => condition.id === id)
}

export function laboratoryNameIn(
  { laboratories }: Pick<CertificateDocument, 'laboratories'>,
  id: string,
): string {
  return laboratories.find((laboratory) => laboratory.id === id)?.name ?? id
}
