/** Reads charts out, by pointer or by arrow keys. */
import { readCharts } from './chart-readings.ts'

readCharts(document)
