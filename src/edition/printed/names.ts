/** What a document calls the conditions and laboratories that its results name by id. */
import type { CertificateFacts } from '../shape/certificate-facts.ts'

export type CertificateCondition = CertificateFacts['conditions'][number]

export function conditionIn(
  { conditions }: Pick<CertificateFacts, 'conditions'>,
  id: string | undefined,
): CertificateCondition | undefined {
  return conditions.find((condition) => condition.id === id)
}

export function laboratoryNameIn(
  { laboratories }: Pick<CertificateFacts, 'laboratories'>,
  id: string,
): string {
  return laboratories.find((laboratory) => laboratory.id === id)?.name ?? id
}
