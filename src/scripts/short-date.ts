const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** "8 Mar 2026" as the pages print it, from "2026-03-08"; other text stays as it is. */
export function shortDate(day: string): string {
  const [year, month, date] = day.split('-')
  const name = MONTHS[Number(month) - 1]
  return name === undefined ? day : `${Number(date)}\u00a0${name}\u00a0${year}`
}
