/** Kinds of material in words. */

const KIND_WORDS: Readonly<Record<string, string>> = {
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
  return KIND_WORDS[kind] ?? kind
}
