/** How each sample was taken and who tested it. */
import { defined } from '../../core/measure/defined.ts'
import { plural } from '../../words/numbers.ts'
import { writtenText } from '../../words/units.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'
import type { PrintedFact, PrintedLaboratory, PrintedSampling } from '../shape/printed-certificate.ts'
import { fact } from './fact.ts'

type CertificateSample = CertificateFacts['samples'][number]
type CertificateLaboratory = CertificateFacts['laboratories'][number]

export function printedSampling({
  lot,
  samples,
}: Pick<CertificateFacts, 'lot' | 'samples'>): PrintedSampling {
  const others = samples.filter((sample) => !isOfLot(sample))
  return defined({
    samples: samples.filter(isOfLot).map((sample) => sampleFacts(sample, lot.number)),
    others: others.length === 0 ? undefined : others.map(otherSampleWords).join('; '),
  })
}

export function printedLaboratory(laboratory: CertificateLaboratory): PrintedLaboratory {
  return {
    name: { text: laboratory.name, to: { kind: 'laboratory', id: laboratory.id } },
    particulars: laboratoryWords(laboratory),
  }
}

/** Splits and independent samples check the lot; they are not what it is judged on. */
function isOfLot({ kind }: CertificateSample): boolean {
  return kind === 'composite' || kind === 'grab'
}

function sampleFacts(sample: CertificateSample, lotNumber: string): PrintedFact[] {
  const { increments, mass, represents } = sample
  return [
    { label: 'Sample', text: `${lotNumber}/${sample.id}, ${sample.kind}` },
    fact('Taken', [sample.taken]),
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
    fact('Received', [sample.received]),
    fact('Retained', [sample.retained]),
  ]
}

function otherSampleWords({ kind, id, of, to, taken }: CertificateSample): string {
  return [
    `${kind === 'split' ? 'Split' : 'Independent sample'} ${id}`,
    of === null ? '' : ` of ${of}`,
    to === null ? '' : ` sent to ${to}`,
    taken === null ? '' : `, taken ${taken}`,
  ].join('')
}

function laboratoryWords({ address, standing, accreditation }: CertificateLaboratory): string {
  const accredited =
    accreditation === null
      ? 'no accreditation in force'
      : `accreditation: ${accreditation}; results outside its scope are marked “not accredited”`
  const who = standing === 'agency' ? 'laboratory of an agency' : standing
  return `, ${address.join(', ')}; ${who}; ${accredited}`
}
