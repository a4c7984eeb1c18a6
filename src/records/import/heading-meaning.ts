/**
 * What a heading means, and how sure that is; what may mean two things is left to a person, with both named. Long, as the
 * list of names is.
 */
import { isMortarResult } from '../../core/measure/ratio-indices.ts'
import { tradeWord } from '../../core/measure/trade-words.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import { fieldNames, TABLE_KINDS } from './fields.ts'
import { UNDECIDED } from './import-map.ts'

/** How a column was placed: for sure, by a guess that a person looks at, or not at all. */
export type Certainty = 'sure' | 'guessed' | 'open'

/** What laboratories and mills call the fields that are no properties; each name for sure, in small letters and digits. */
const NAMES: Readonly<Record<string, readonly string[]>> = {
  lot: ['lot', 'lotno', 'lotnumber', 'lotid', 'lotnr', 'batchno', 'silolot', 'certificateno'],
  source: ['source', 'plant', 'plantname'],
  number: ['printednumber', 'printedlotnumber'],
  class: ['class'],
  produced: ['produced', 'production', 'productiondate', 'dateproduced', 'dateofproduction'],
  'produced-from': ['from', 'producedfrom', 'start', 'productionstart', 'periodfrom', 'begin'],
  'produced-to': ['to', 'producedto', 'end', 'productionend', 'periodto', 'until'],
  quantity: ['quantity', 'lotquantity', 'lotsize', 'lotmass', 'tonnage', 'tons', 'tonnes', 'productiont'],
  silo: ['silo', 'bin', 'silono'],
  'silo-seals': ['siloseals', 'siloseal', 'sealsofsilo'],
  'purchase-order': [
    'po',
    'pono',
    'ponumber',
    'purchaseorder',
    'purchaseorderno',
    'purchaseordernumber',
    'orderno',
    'ordernumber',
  ],
  sample: ['sample', 'sampleid', 'sampleno', 'samplenumber', 'samplemark'],
  'sample-kind': ['samplekind', 'sampletype', 'kindofsample'],
  duty: ['duty', 'sampleduty', 'regularorcomposite'],
  sampled: ['sampled', 'sampledate', 'datesampled', 'dateofsampling', 'samplingdate'],
  'sampled-by': ['sampledby', 'sampler'],
  laboratory: ['laboratory', 'lab', 'testedat'],
  tested: [
    'tested',
    'datetested',
    'testdate',
    'dateoftest',
    'analysisdate',
    'analysed',
    'analyzed',
    'broken',
  ],
  reported: ['reported', 'datereported', 'reportdate'],
  subcontracted: ['subcontracted', 'subcontractor', 'subcontractedto'],
  condition: ['condition', 'testcondition'],
  control: ['control', 'controlbatch', 'controlid', 'controlmix'],
  cast: ['cast', 'castdate', 'datecast', 'dateofcasting', 'mixed', 'mixdate', 'moulded', 'molded'],
  flow: ['flow', 'flowtable'],
  water: ['water', 'mixwater', 'mixingwater'],
  age: ['age', 'testage', 'aged'],
  specimen: ['specimen', 'specimenno', 'cube', 'cubeno', 'specimenid'],
  load: [
    'load',
    'loads',
    'cubeload',
    'cubeloads',
    'maxload',
    'maximumload',
    'failureload',
    'breakingload',
    'peakload',
    'loadkn',
    'loadlbf',
  ],
  'control-strength': ['controlstrength', 'strengthofcontrol', 'controlmean', 'controlmpa', 'controlpsi'],
  resistance: ['resistance', 'resistances', 'measuredresistance', 'r'],
  temperature: ['temperature', 'temp', 'specimentemperature'],
  bill: [
    'bill',
    'bl',
    'blno',
    'billno',
    'billoflading',
    'bol',
    'bolno',
    'ticket',
    'ticketno',
    'ladingno',
    'deliverynote',
  ],
  date: ['date', 'shipdate', 'dateshipped', 'shipped', 'deliverydate', 'loaded'],
  mass: [
    'mass',
    'net',
    'netmass',
    'netweight',
    'netweightt',
    'weight',
    'nettons',
    'nett',
    'shortton',
    'netshortton',
  ],
  to: ['consignee', 'customer', 'shipto', 'deliveredto', 'receiver'],
  project: ['project', 'contract', 'job', 'jobno', 'projectno'],
  seal: ['seal', 'sealno'],
  vehicle: ['vehicle', 'truck', 'railcar', 'truckno', 'car'],
  note: ['note', 'remarks', 'remark', 'comment', 'comments'],
}

const BY_NAME = new Map(
  Object.entries(NAMES).flatMap(([field, names]) => names.map((name) => [name, field] as const)),
)

export interface Meaning {
  readonly to: string
  readonly certainty: Certainty
  readonly why: string | null
}

/** What a heading means, whatever table it heads. */
export function meaningOf(heading: string): Meaning {
  const bare = bareName(heading)
  const field = BY_NAME.get(bare)
  // One numbered reading of several: "Cube 1", "Load 3".
  const [, numbered = ''] = /^(.*?)[#\d]+[a-c]?$/.exec(bare) ?? []
  const reading = BY_NAME.get(numbered)
  const word = tradeWord(withoutJoint(heading)) ?? tradeWord(heading)
  const ofSeveral = averaged(heading)
  if (ofSeveral !== undefined) return { to: UNDECIDED, certainty: 'open', why: ofSeveral }
  if (word !== undefined && 'sure' in word) return { to: word.sure, certainty: 'sure', why: null }
  if (word !== undefined)
    return { to: UNDECIDED, certainty: 'open', why: `${word.why}: ${word.either.join(' or ')}` }
  if (field !== undefined) return { to: field, certainty: 'sure', why: null }
  const own = heading
    .replace(/\s*\([^)]*\)\s*$/, '')
    .toLowerCase()
    .replaceAll(' ', '-')
  if (TABLE_KINDS.some((kind) => fieldNames(kind).includes(own)))
    return { to: own, certainty: 'sure', why: null }
  if (reading !== undefined && ['load', 'specimen', 'resistance'].includes(reading))
    return {
      to: reading === 'resistance' ? 'resistance' : 'load',
      certainty: 'guessed',
      why: 'one reading of several',
    }
  const near = nearNames(bare, BY_NAME.keys())
  const [, nearest] = /^did you mean (\w+)/.exec(near) ?? []
  const guess = nearest === undefined || bare.length < 4 ? undefined : BY_NAME.get(nearest)
  return guess === undefined
    ? { to: UNDECIDED, certainty: 'open', why: null }
    : { to: guess, certainty: 'guessed', why: 'by a name that is near' }
}

const AVERAGE = /\b(?:mean|average|avg|min(?:imum)?|max(?:imum)?|range)\b\.?(?:\s+(?:of\s+)?)?/i

/** Why a column of averages or extremes of a measured property is not taken for a result; undefined for any other. */
function averaged(heading: string): string | undefined {
  const of = tradeWord(heading.replace(AVERAGE, '').trim())
  return AVERAGE.test(heading) && of !== undefined && 'sure' in of && !isMortarResult(of.sure)
    ? `computed from the regular samples themselves where a table gives those: then ignore; else ${of.sure}`
    : undefined
}

/** The part of a joined heading that names the column, without its age and unit. */
function withoutJoint(heading: string): string {
  return (
    heading.split(' / ').filter((part) => !/^\d{1,3}\s*-?\s*d(?:ays?)?$/i.test(part.trim()))[0] ?? heading
  )
}

function bareName(heading: string): string {
  return heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[([][^)\]]*[)\]]/g, ' ')
    .replace(/\b\d{1,3}\s*-?\s*d(?:ays?)?\b/g, ' ')
    .replace(/_(?:kn|n|lbf|d|h|mpa|ohm|t)$/, '')
    .replace(/,\s*(?:kn|n|lbf|mpa|psi|ohm|t|%)\s*(?=$|\/)/g, ' ')
    .replace(/[^a-z0-9#]/g, '')
}
