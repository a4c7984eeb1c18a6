/**
 * The bench page: a form and a text that are one record, judged as one types. The text is the truth; what the form changes
 * becomes edits of it. After the page has loaded, nothing but a chosen source or lot is fetched, and nothing is ever sent.
 * Longer than most files: all parts meet here.
 */
import type { UnpackedSource } from '../../core/evidence/source-evidence.ts'
import { momentIn, momentOfDay } from '../../core/measure/moment.ts'
import { type Edit, EditFault, editYaml } from '../../records/edit/edit-yaml.ts'
import type { Plain } from '../../records/edit/write-yaml.ts'
import { readControlAlone } from '../../records/checks/lot-alone.ts'
import { keyOrder } from '../../records/form/form-edits.ts'
import type { FormField } from '../../records/form/form-parts.ts'
import { lotForm } from '../../records/form/lot-form.ts'
import { writtenLot } from '../../records/form/written-lot.ts'
import { parseYaml } from '../../records/yaml/parse-yaml.ts'
import { fullSentence } from '../../words/sentences.ts'
import { dayOfWork, type SiteRecords } from './bench-records.ts'
import { onFile } from './chosen-files.ts'
import { comparedWith } from './compared-view.ts'
import { type DroppedControl, droppedFile } from './dropped-file.ts'
import { helpText, idOf } from './field-view.ts'
import { formIn } from './form-view.ts'
import { judgeNow } from './judge-now.ts'
import { keeperOf } from './kept-work.ts'
import { addresses, parts, say } from './parts.ts'
import { askPasted } from './paste-panel.ts'
import { fetchRecord, fetchSite, fetchSource } from './site-files.ts'
import { listNames, listSets, siteNames } from './site-lists.ts'
import { atOnce, notSoon, soon } from './soon.ts'
import { copied, saveAs } from './take-away.ts'
import { plainTextView, type TextView } from './text-view.ts'

/** Time without a key pressed before the lot is judged again, and before it is kept. */
const [JUDGED_AFTER_MS, KEPT_AFTER_MS] = [120, 400]

const DAY_MS = 86_400_000

const keeper = keeperOf(addresses.site, () => localStorage)
const { source, lot, under, asOf } = parts

let text = ''
let site: SiteRecords | undefined
let others: UnpackedSource | undefined
let view: TextView = plainTextView(parts.text, (typed) => changed(typed, 'text'))

const form = formIn(parts.form, {
  edit: applied,
  paste: askColumn,
  help: (field) => {
    parts.help.textContent = field === undefined ? '' : helpText(field)
  },
})

function id(): string {
  return `${source.value}/${lot.value.trim()}`
}

function recordNow(): Plain | undefined {
  const parsed = parseYaml(text)
  return 'value' in parsed ? (parsed.value as Plain) : undefined
}

function applied(edits: readonly Edit[]): void {
  if (edits.length === 0) return
  try {
    changed(editYaml(text, edits, { order: keyOrder }), 'form')
  } catch (fault) {
    if (!(fault instanceof EditFault)) throw fault
    say(`${fault.message} Change it in the text.`)
  }
}

function askColumn(field: FormField, pasted: string): void {
  askPasted(parts.asked, {
    ...{ field, fields: form.fields(), text: pasted, record: recordNow(), edit: applied },
    back: () => document.getElementById(idOf(field.path))?.focus(),
  })
}

/** The one way in which the text changes. */
function changed(to: string, by: 'form' | 'text' | 'file'): void {
  text = to
  // What was compared was the text before.
  parts.compared.replaceChildren()
  if (by !== 'text') view.show(text)
  drawForm()
  soon(judge, JUDGED_AFTER_MS)
  if (by !== 'file') soon(keep, KEPT_AFTER_MS)
}

function drawForm(): void {
  const read = lotForm(text)
  const isUnread = 'fault' in read
  form.close(isUnread)
  parts.closed.textContent = isUnread
    ? `The text cannot be read (line ${read.fault.line}): the form follows again once it can.`
    : ''
  if (!isUnread) form.show(read.sections, recordNow())
}

function judge(): void {
  const day = momentIn(asOf.value) ?? site?.asOf
  if (site === undefined || others === undefined || day === undefined) return
  const criterion = site.records.criteria.get(under.value)
  judgeNow({ id: id(), text, asOf: day, criterion }, { site, others, form, view })
}

function keep(): void {
  const kept = keeper.keep({ lot: id(), text, under: under.value })
  say(
    kept
      ? 'Not saved to a file yet; kept in this browser.'
      : 'This browser keeps nothing for this page: save the record to a file before you leave.',
  )
}

async function sourceChosen(): Promise<void> {
  others = undefined
  if (site === undefined) return
  listSets(site.records)
  listNames(siteNames(site.records, recordNow()))
  try {
    const asked = source.value
    const found = await fetchSource(addresses, asked, site.records)
    if (source.value === asked) others = found
    judge()
  } catch {
    parts.headline.textContent =
      'Not judged: the source’s other lots could not be fetched. Form and text work all the same.'
  }
}

function isSource(name: string | undefined): name is string {
  return [...source.options].some(({ value }) => value === name)
}

/** Opens a lot: what is kept of it here, else what the site publishes. */
async function open(asked: string): Promise<void> {
  const [from = '', name = ''] = asked.split('/')
  if (!isSource(from)) {
    say(`No source “${from}” is on record here.`)
    return sourceChosen()
  }
  source.value = from
  lot.value = name
  const kept = keeper.kept(asked)
  if (kept !== undefined) {
    under.value = kept.under
    changed(kept.text, 'file')
    say('Your unsaved work on this lot, as this browser kept it.')
  } else await openPublished(asked)
  await sourceChosen()
}

async function openPublished(asked: string): Promise<void> {
  try {
    changed(writtenLot(await fetchRecord(addresses, asked)), 'file')
    say('The record as the site publishes it.')
  } catch {
    say(`The record of ${asked} could not be fetched.`)
  }
}

async function openFile(file: File): Promise<void> {
  const dropped = await droppedFile(file)
  if ('fault' in dropped) {
    say(`${dropped.fault}.`)
    return
  }
  if ('control' in dropped) {
    takeControl(dropped)
    return
  }
  // What was typed last belongs to the lot that stood here.
  atOnce(keep)
  if (isSource(dropped.source)) source.value = dropped.source
  if (dropped.lot !== undefined) lot.value = dropped.lot
  changed(dropped.text, 'file')
  say(`${file.name} is open; nothing of it has left this browser.`)
  await sourceChosen()
  if (isPublished()) await compare()
}

/** A batch is published with the first lot that is tested against it: until then its file is dropped here as well. */
function takeControl({ control: name, text: written }: DroppedControl): void {
  if (site === undefined) return
  const { control, diagnostics } = readControlAlone({ id: name, text: written }, site.records)
  if (control === undefined) {
    const [first] = diagnostics
    say(`${name}.yaml, line ${first?.line}: ${fullSentence(`${first?.message}; ${first?.mend}`)}`)
    return
  }
  const controls = new Map([...site.records.controls, [name, control]])
  site = { ...site, records: { ...site.records, controls } }
  say(`The control batch ${name} can be named now, until this page is left.`)
  judge()
}

function isPublished(): boolean {
  return others?.lots.some((one) => one.id === id()) === true
}

async function compare(): Promise<void> {
  const compared = text
  const found = await comparedWith(id(), recordNow(), () => fetchRecord(addresses, id()))
  if (text === compared) parts.compared.replaceChildren(...found)
}

function save(): void {
  const name = `${lot.value.trim() || 'lot'}.yaml`
  saveAs(name, text)
  forget()
  say(`Saved as ${name}: put it into lots/${source.value}/ of the content folder.`)
}

async function copy(): Promise<void> {
  say(
    (await copied(text))
      ? 'The text is copied.'
      : 'This browser does not let the page copy: select the text and copy it yourself.',
  )
}

function forget(): void {
  notSoon(keep)
  keeper.discard(id())
}

/** Back to what is published, or to an empty sheet. */
async function discard(): Promise<void> {
  forget()
  if (isPublished()) return open(id())
  changed('', 'file')
  say('Discarded: the sheet is empty.')
}

/** Work on a lot moves with its name. */
function listenToName(): void {
  let before = id()
  const renamed = () => {
    keeper.discard(before)
    before = id()
    if (text === '') return
    soon(keep, KEPT_AFTER_MS)
    soon(judge, JUDGED_AFTER_MS)
  }
  for (const field of [source, lot])
    field.addEventListener('focus', () => {
      before = id()
    })
  lot.addEventListener('input', renamed)
  source.addEventListener('change', () => {
    renamed()
    void sourceChosen()
  })
}

function listen(): void {
  listenToName()
  onFile((file) => void openFile(file))
  // What was typed last is kept too.
  window.addEventListener('pagehide', () => atOnce(keep))
  under.addEventListener('change', () => {
    judge()
    if (text !== '') soon(keep, KEPT_AFTER_MS)
  })
  asOf.addEventListener('change', judge)
  parts.save.addEventListener('click', save)
  parts.copy.addEventListener('click', () => void copy())
  parts.discard.addEventListener('click', () => void discard())
  parts.compare.addEventListener('click', () => void compare())
  parts.form.addEventListener('focusin', () => listNames(siteNames(site?.records, recordNow())))
  parts.page.querySelector('form')?.addEventListener('submit', (event) => event.preventDefault())
}

async function loadEditor(): Promise<void> {
  try {
    const { editorIn } = await import('./editor.ts')
    parts.text.replaceChildren()
    view = editorIn(parts.text, {
      typed: (typed) => changed(typed, 'text'),
      names: () => siteNames(site?.records, recordNow()),
    })
    view.show(text)
    judge()
  } catch {
    // The plain field that stands there does all but completing.
  }
}

async function start(): Promise<void> {
  listen()
  drawForm()
  const loading = loadEditor()
  try {
    site = await fetchSite(addresses)
    asOf.value = dayOfWork(site, momentOfDay(Math.floor(Date.now() / DAY_MS)))
  } catch {
    parts.headline.textContent =
      'Not judged: the site’s records could not be fetched. Form and text work all the same.'
  }
  const asked = new URLSearchParams(location.search).get('lot') ?? keeper.last()?.lot
  await (asked === undefined ? sourceChosen() : open(asked))
  await loading
  parts.page.dataset['ready'] = 'yes'
  await fetchOthers()
}

/** The other sources, one after the other: once they are here the page judges their lots without a network too. */
async function fetchOthers(): Promise<void> {
  if (site === undefined) return
  for (const { value } of source.options)
    try {
      await fetchSource(addresses, value, site.records)
    } catch {
      // Fetched again when it is chosen.
    }
}

void start()
