/** Digests of the plans of the invented studies, which `check` prints where a plan is no longer what was digested. */
export const PLAN_DIGESTS = {
  'S-01': 'sha256-d59e3f64253129543f51eb66a39f162e26e6b30c2ac88579eb69581e9e4ac027',
  'R-01': 'sha256-87a297477f5394395ac6ecd827653a9026a0c5964028969c3e346524bdf62344',
  'G-01': 'sha256-2866d515ddff3479583a23644fc1266508f3311984aebbd0e257481636581cdb',
  'P-01': 'sha256-6825e85d8cca35ad2f38ba695e3ab4a79080d763c6f7debe6efb5f2d05cde629',
} as const
