/** Digests of the plans of the invented studies, which `check` prints where a plan is no longer what was digested. */
export const PLAN_DIGESTS = {
  'S-01': 'sha256-65d7c131fdedfa9ffe03270cdf1ce1edf197578ec3d2805828423abe13e39a5f',
  'R-01': 'sha256-87a297477f5394395ac6ecd827653a9026a0c5964028969c3e346524bdf62344',
  'G-01': 'sha256-2866d515ddff3479583a23644fc1266508f3311984aebbd0e257481636581cdb',
  'G-02': 'sha256-eb31422dba350a8b660840af030c74a56ed706bea716e3fd082576d6fba41f37',
  'P-01': 'sha256-6825e85d8cca35ad2f38ba695e3ab4a79080d763c6f7debe6efb5f2d05cde629',
} as const
