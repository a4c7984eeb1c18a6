/** Kinds of material in words. */

import type { MaterialKind } from '../core/measure/material-kind.ts'

const KIND_WORDS: Readonly<Record<MaterialKind, string>> = {
  'coal-fly-ash': 'coal fly ash',
  'coal-bottom-ash': 'coal bottom ash',
  'harvested-coal-ash': 'harvested coal ash',
  'raw-natural-pozzolan': 'raw natural pozzolan',
  'calcined-natural-pozzolan': 'calcined natural pozzolan',
  slag: 'slag',
  'silica-fume': 'silica fume',
  blend: 'blend',
  'limestone-filler': 'ground limestone filler',
  'quartz-filler': 'ground quartz filler',
}

export function kindWords(kind: string): string {
  return (KIND_WORDS as Readonly<Record<string, string>>)[kind] ?? kind
}

/** Every kind, in the order of the list. */
export const MATERIAL_KINDS = Object.keys(KIND_WORDS) as readonly MaterialKind[]
