/** How each sample was taken and who tested it. */
import { plural } from '../../words/numbers.ts'
import { writtenText } from '../../words/units.ts'
import { withPrintedDates } from '../../words/stored-text.ts'
import { paths } from '../shape/addresses.ts'
import type { CertificateDocument } from '../shape/document.ts'
import type { Edition } from '../shape/edition.ts'
import { type Fact, fact } from './fact.ts'
import { type Linked, linked } from './linked.ts'

export interface SamplingView {
  /** The facts of each sample that the lot is judged on. */
  readonly samples: readonly (readonly Fact[])[]
  /** Splits and independent samples in one sentence without a full stop. */
  readonly others: string | null
  readonly laboratories: readonly { readonly name: Linked; readonly particulars: string }[]
}

type DocumentSample = CertificateDocument['samples'][number]
type DocumentLaboratory = CertificateDocument['laboratories'][number]

export function samplingView(
  edition: Pick<Edition, 'address' | 'laboratories'>,
  { lot, samples, laboratories }: Pick<CertificateDocument, 'lot' | 'samples' | 'laboratories'>,
): SamplingView {
  const own = samples.filter(isOfLot)
  const others = samples.filter((sample) => !isOfLot(sample))
  return {
    samples: own.map((sample) => sampleFacts(sample, lot.number)),
    others: others.length === 0 ? null : others.map((sample) => otherSampleWords(sample, edition)).join('; '),
    laboratories: laboratories.map((laboratory) => ({
      name: linked(
        edition,
        laboratory.name,
        edition.laboratories.has(laboratory.id) ? paths.laboratory(laboratory.id) : null,
      ),
      particulars: laboratoryWords(laboratory),
    })),
  }
}

/** Splits and independent samples check the lot; they are not what it is judged on. */
function isOfLot({ kind }: DocumentSample): boolean {
  return kind === 'composite' || kind === 'grab'
}

function sampleFacts(sample: DocumentSample, lotNumber: string): Fact[] {
  const { increments, mass, represents } = sample
  return [
    { label: 'Sample', text: `${lotNumber}/${sample.id}, ${sample.kind}` },
    fact('Taken', [printedDates(sample.taken)]),
    fact('Place', [sample.place]),
    {
      label: 'Method; by',
      text: `${sample.method ?? 'method not recorded'}; ${sample.by ?? 'sampler not recorded'}`,
    },
    fact('Increments, mass, container', [
      increments === null ? null : plural(increments, 'increment', 'increments'),
      mass === null ? null : writtenText(mass),
      sample.container,
    ]),
    fact('Represents', [represents === null ? null : writtenText(represents)]),
    fact('Received', [printedDates(sample.received)]),
    fact('Retained', [printedDates(sample.retained)]),
  ]
}

function otherSampleWords(sample: DocumentSample, { laboratories }: Pick<Edition, 'laboratories'>): string {
  const { kind, id, of, to, taken } = sample
  return [
    `${kind === 'split' ? 'Split' : 'Independent sample'} ${id}`,
    of === null ? '' : ` of ${of}`,
    to === null ? '' : ` sent to ${laboratories.get(to)?.name ?? to}`,
    taken === null ? '' : `, taken ${withPrintedDates(taken)}`,
  ].join('')
}

function laboratoryWords({ address, standing, accreditation }: DocumentLaboratory): string {
  const accredited =
    accreditation === null
      ? 'no accreditation in force'
      : `accreditation: ${withPrintedDates(accreditation)}; results outside its scope are marked “not accredited”`
  const who = standing === 'agency' ? 'laboratory of an agency' : standing
  return `, ${address.join(', ')}; ${who}; ${accredited}`
}

function printedDates(text: string | null): string | null {
  return text === null ? null : withPrintedDates(text)
}
