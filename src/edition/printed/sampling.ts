/** How each sample was taken and who tested it. */
import { defined } from '../../core/measure/defined.ts'
import { dutyOf, type SampleKind } from '../../core/measure/duty.ts'
import { plural } from '../../words/numbers.ts'
import { writtenText } from '../../words/units.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'
import type { PrintedFact, PrintedLaboratory, PrintedSampling } from '../shape/printed-certificate.ts'
import { contactLinks } from './contact-links.ts'
import { fact } from './fact.ts'

type CertificateSample = CertificateFacts['samples'][number]
type CertificateLaboratory = CertificateFacts['laboratories'][number]

export function printedSampling({
  lot,
  samples,
}: Pick<CertificateFacts, 'lot' | 'samples'>): PrintedSampling {
  const others = samples.filter((sample) => !isOfLot(sample))
  return defined({
    samples: takenAlike(samples.filter(isOfLot)).map((alike) => sampleFacts(alike, lot.number)),
    others: others.length === 0 ? undefined : others.map(otherSampleWords).join('; '),
  })
}

export function printedLaboratory(laboratory: CertificateLaboratory): PrintedLaboratory {
  const contacts = contactLinks(laboratory)
  return defined({
    name: { text: laboratory.name, to: { kind: 'laboratory' as const, id: laboratory.id } },
    particulars: laboratoryWords(laboratory),
    contacts: contacts.length === 0 ? undefined : contacts,
  })
}

/** Splits, independent samples and others for verification check the lot; they are not what it is judged on. */
function isOfLot({ kind, duty }: CertificateSample): boolean {
  return (kind === 'composite' || kind === 'grab') && duty !== 'verification'
}

/** Regular samples of a lot that were taken in the same way, of which there may be many, are told together. */
type Alike = readonly [CertificateSample, ...CertificateSample[]]

function takenAlike(samples: readonly CertificateSample[]): Alike[] {
  const groups = Map.groupBy(
    samples,
    ({ taken: _taken, begun: _begun, ended: _ended, received: _received, ...sample }) =>
      sample.duty === 'regular' ? JSON.stringify({ ...sample, id: '' }) : sample.id,
  )
  return [...groups.values()] as unknown as Alike[]
}

function sampleFacts(alike: Alike, lotNumber: string): PrintedFact[] {
  const [sample] = alike
  const last = alike.at(-1) ?? sample
  const { increments, mass, represents } = sample
  const each = 1 < alike.length ? ' each' : ''
  return [
    { label: 'Sample', text: `${lotNumber}/${alike.map(({ id }) => id).join(', ')}, ${kindWords(alike)}` },
    fact('Taken', [each === '' ? sample.taken : spanWords(sample.begun, last.ended)]),
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
    fact('Represents', [represents === null ? null : `${writtenText(represents)}${each}`]),
    fact('Received', [spanWords(sample.received, last.received)]),
    fact('Retained', [sample.retained]),
  ]
}

/** "composite", "grab"; the duty where several are told together or it is not the usual one of their kind. */
function kindWords([{ kind, duty }, ...others]: Alike): string {
  if (0 < others.length) return `${others.length + 1} regular samples, ${kind}`
  const usual = dutyOf({ sampleKind: kind as SampleKind })
  return duty === usual ? kind : `${kind}, ${duty} sample`
}

function spanWords(first: string | null, last: string | null): string | null {
  return first === null || last === null || first === last ? first : `${first} to ${last}`
}

const OTHERS: Readonly<Record<string, string>> = { split: 'Split', independent: 'Independent sample' }

function otherSampleWords({ kind, id, of, to, taken }: CertificateSample): string {
  return [
    `${OTHERS[kind] ?? 'Verification sample'} ${id}`,
    of === null ? '' : ` of ${of}`,
    to === null ? '' : ` sent to ${to}`,
    taken === null ? '' : `, taken ${taken}`,
  ].join('')
}

function laboratoryWords({
  address,
  standing,
  accreditation,
  accreditationUnknown,
}: CertificateLaboratory): string {
  const accredited =
    accreditation === null
      ? accreditationUnknown === true
        ? 'accreditation not recorded'
        : 'no accreditation in force'
      : `accreditation: ${accreditation}; results outside its scope are marked “not accredited”`
  const who = standing === 'agency' ? 'laboratory of an agency' : standing
  return `, ${address.join(', ')}; ${who}; ${accredited}`
}
