/** What laboratories and mills call the fields of records that are no properties. Long, as the list is. */

/** Each name for sure, in small letters and digits. */
const NAMES: Readonly<Record<string, readonly string[]>> = {
  lot: ['lot', 'lotno', 'lotnumber', 'lotid', 'lotnr', 'batchno', 'silolot', 'certificateno'],
  source: ['source', 'plant', 'plantname'],
  number: ['printednumber', 'printedlotnumber'],
  class: ['class'],
  produced: ['produced', 'production', 'productiondate', 'dateproduced', 'dateofproduction'],
  'produced-from': ['from', 'producedfrom', 'start', 'productionstart', 'periodfrom', 'begin'],
  'produced-to': ['to', 'producedto', 'end', 'productionend', 'periodto', 'until'],
  quantity: [
    'quantity',
    'qty',
    'lotqty',
    'lotquantity',
    'lotsize',
    'lotmass',
    'tonnage',
    'tons',
    'tonnes',
    'productiont',
  ],
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

/** The field by what the trade calls it. */
export const FIELD_NAMED: ReadonlyMap<string, string> = new Map(
  Object.entries(NAMES).flatMap(([field, names]) => names.map((name) => [name, field] as const)),
)

/** Keys of a sample that the columns of an import name more fully, since a column stands alone. */
const OF_SAMPLES: Readonly<Record<string, string>> = {
  'split-of': 'of',
  'sent-to': 'to',
  'sampled-by': 'by',
  'sample-place': 'place',
  'sampling-method': 'method',
}

/**
 * How to write what the trade, or a column of an import, calls by this name; empty where the place takes no such field.
 * @param allowed its keys
 */
export function fieldMend(name: string, allowed: readonly string[]): string {
  const named = FIELD_NAMED.get(name.toLowerCase().replaceAll(/[^a-z0-9]/g, ''))
  const meant = [named, OF_SAMPLES[name]].find((key) => key !== undefined && allowed.includes(key))
  return meant === undefined ? '' : `write ${meant}`
}
