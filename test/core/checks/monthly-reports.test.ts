import { describe, expect, it } from 'vitest'
import { reportDue } from '../../../src/core/checks/monthly-reports.ts'

describe('reportDue', () => {
  it('leaves out hours that make no whole day: 15.5 days after September are 15', () => {
    expect(reportDue('2025-09', 15.5 * 24).text).toBe('2025-10-15')
    expect(reportDue('2024-02', 24).text).toBe('2024-03-01')
  })
})
