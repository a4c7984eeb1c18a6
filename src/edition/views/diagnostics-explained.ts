/** What the page of all diagnostics shows. */
import { placeOfExample } from '../../records/diagnostics/explained/explanation.ts'
import { explanationOf, FAMILIES, titleOf } from '../../records/diagnostics/explanations.ts'

export interface ExplainedDiagnostic {
  /** Also its address within the page. */
  readonly code: string
  readonly title: string
  readonly meaning: string
  readonly fix: string
  readonly example: {
    /** "in lots/tuff/T-1.yaml"; empty where a file's name itself is the example. */
    readonly where: string
    readonly wrong: string
    readonly right: string
  } | null
}

export interface ExplainedFamily {
  readonly id: string
  readonly title: string
  readonly diagnostics: readonly ExplainedDiagnostic[]
}

/** Every code by family, in the order in which a record is read. */
export function diagnosticsExplained(): ExplainedFamily[] {
  return FAMILIES.map(({ id, title, codes }) => ({
    id,
    title,
    diagnostics: codes.map((code) => {
      const { meaning, fix, example } = explanationOf(code)
      return {
        ...{ code, title: titleOf(code), meaning, fix },
        example:
          example === undefined
            ? null
            : {
                where: placeOfExample(example),
                wrong: example.wrong,
                right: example.right,
              },
      }
    }),
  }))
}
