/** The tests on mortar, in the order of the results. A test that is not in this list is not computed. */
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import { BULK_RESISTIVITY } from '../resistivity/resistivity-measurement.ts'
import { COMPRESSIVE_STRENGTH } from '../strength/compressive-strength.ts'

export const MORTAR_MEASUREMENTS: readonly MortarMeasurement[] = [COMPRESSIVE_STRENGTH, BULK_RESISTIVITY]
