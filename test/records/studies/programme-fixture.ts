/** A planned study, and what stands in its programme by default. */

export const PROGRAMME = {
  crossed:
    '{ replacement: { R30: 30 %, R50: 50 % }, temperature: { "23": 23 degC, "50": 50 degC }, cement: { A: C1, B: C2 } }',
  every: '{ w/cm: 0.485, curing: saturated-lime-water }',
  casting: '{ first: 2026-04-07, on: [tuesday, wednesday], mortars-a-day: 6 }',
  ages: '[{ age: 7 d, within: 3 h, strength: 3 }, { age: 28 d, within: 12 h, strength: 3, resistivity: 3 }]',
  batch: '{ cementitious: 500 g, sand: 1375 g }',
} as const

/** @param changes members of the programme, as text; undefined takes one out */
export function planned(changes: Readonly<Record<string, string | undefined>> = {}): string {
  const members = Object.entries({ ...PROGRAMME, ...changes }).filter(([, text]) => text !== undefined)
  return `title: Second round
kind: screening
question: Which?
by: laboratory
cements: { C1: {}, C2: {} }
plan: { fixed: 2026-03-01, batches: 2, threshold: { strength-activity-index: 5 % } }
materials:
  Q1: { title: quartz, class: inert, shown-by: trial }
  A1: { title: ash, class: reactive, shown-by: trial }
programme:
${members.map(([name, text]) => `  ${name}: ${text}\n`).join('')}`
}
