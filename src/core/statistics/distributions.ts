/** The distributions that rules and statistics ask for, from one library each. */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import studentCdf from '@stdlib/stats-base-dists-t-cdf'
import studentQuantile from '@stdlib/stats-base-dists-t-quantile'

/** Standard normal, or Student t with `df` degrees of freedom where they are known. */
export function cumulative(x: number, df?: number): number {
  return df === undefined ? normalCdf(x, 0, 1) : studentCdf(x, df)
}

/** @param p between 0 and 1 */
export function quantile(p: number, df?: number): number {
  return df === undefined ? normalQuantile(p, 0, 1) : studentQuantile(p, df)
}
