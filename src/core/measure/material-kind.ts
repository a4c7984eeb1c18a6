/** What a material is, as the trade sorts supplementary cementitious materials and the fillers they are compared with. */
export type MaterialKind =
  | 'coal-fly-ash'
  | 'coal-bottom-ash'
  | 'harvested-coal-ash'
  | 'raw-natural-pozzolan'
  | 'calcined-natural-pozzolan'
  | 'slag'
  | 'silica-fume'
  | 'blend'
  | 'limestone-filler'
  | 'quartz-filler'
