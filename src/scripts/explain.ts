/** Recomputes why a resistivity moved from inputs of the reader's own; nothing leaves the page. */
import { defined } from '../core/measure/defined.ts'
import { type ExplainedPair, explainResistivity } from '../core/resistivity/resistivity-explained.ts'
import { explanationCells, explanationWords } from '../words/explanation-words.ts'
import { fullSentence } from '../words/sentences.ts'

for (const form of document.querySelectorAll<HTMLFormElement>('form.explain')) {
  form.hidden = false
  form.addEventListener('submit', (event) => {
    event.preventDefault()
  })
  form.addEventListener('input', () => {
    recompute(form)
  })
}

function recompute(form: HTMLFormElement): void {
  const place = form.parentElement
  const state = form.querySelector('.explain-state')
  const number = (name: string) =>
    form.querySelector<HTMLInputElement>(`input[name="${name}"]`)?.valueAsNumber ?? Number.NaN
  const ends = (name: string): [number, number] => [number(`${name}-0`) / 100, number(`${name}-1`) / 100]
  const controlWater = form.dataset['controlWater']
  const pair: ExplainedPair = defined({
    testOhmMetre: Number(form.dataset['test']),
    controlOhmMetre: Number(form.dataset['control']),
    replacement: Number(form.dataset['replacement']),
    cementAlkalis: number('cementAlkalis'),
    materialAlkalis: number('materialAlkalis'),
    waterToCementitious: number('waterToCementitious'),
    controlWaterToCementitious: controlWater === undefined ? undefined : Number(controlWater),
  })
  const assumed = {
    cementReaction: ends('cementReaction'),
    materialReaction: ends('materialReaction'),
    bound: ends('bound'),
  }
  const usable =
    [...Object.values(pair), ...Object.values(assumed).flat()].every(Number.isFinite) &&
    Object.values(assumed).every(([low, high]) => 0 <= low && low <= high && high < 1) &&
    0 < pair.cementAlkalis
  if (place === null || state === null) return
  try {
    if (!usable) throw new RangeError('a number is missing or outside its range')
    const explanation = explainResistivity(pair, assumed)
    const words = place.querySelector('.explained-words')
    if (words !== null) words.textContent = fullSentence(explanationWords(explanation))
    const cells = explanationCells(explanation)
    place.querySelectorAll('.explained-cell').forEach((cell, index) => {
      cell.textContent = cells[index] ?? ''
    })
    state.textContent = 'Computed from your inputs.'
  } catch {
    state.textContent =
      'These inputs give no pore solution: shares must lie from 0 to below 100 %, the least not above the most, ' +
      'and the reaction must leave some water.'
  }
}
