/** How a material is drawn: by its class, and by an arrow where its index is known only as above a bound. */
import type { DotShape } from '../../../charts/dot-rows.ts'
import type { MaterialClass, MaterialMean } from '../../../core/studies/screening/material-means.ts'

const SHAPES: Readonly<Record<MaterialClass, DotShape>> = {
  reactive: 'disc',
  weak: 'triangle',
  inert: 'square',
}

export function dotShape({ above, class: own }: Pick<MaterialMean, 'above' | 'class'>): DotShape {
  return above ? 'up' : SHAPES[own]
}
