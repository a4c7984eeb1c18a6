/** The sites that a build is held against: the one it replaces, and one that the owner names. */
import { statSync } from 'node:fs'
import { pagesAmong } from '../edition/shape/addresses.ts'
import type { IssuedState, Manifest } from '../edition/writers/manifest.ts'
import { heldAgainst, vanishedLines } from './compare-sites.ts'
import { readManifest } from './manifest-file.ts'
import { markerOf, stands } from './output-marker.ts'
import { CommandFailure, EXIT } from './program.ts'

export interface Comparing {
  readonly against?: string
  readonly accept?: readonly string[]
}

export interface EarlierSites {
  /**
   * Asked once, before a page is drawn, so that a loss is refused at once.
   * @param state of the new site, which is asked for only where there is an earlier one
   * @param asOf calendar date that the new site is of, as YYYY-MM-DD
   * @returns lines for the reader of the command @throws CommandFailure for a loss that nobody accepted
   */
  readonly losses: (state: () => IssuedState, asOf: string) => string[]
  /** Pages of the earlier sites that are gone, as lines for the reader of the command. */
  readonly vanished: (manifest: Manifest) => string[]
}

const NOTHING =
  'Nothing was there to compare with: a certificate lost since an earlier build would go unnoticed. Give a copy of the published site with --against DIR.'

/**
 * Reads what is to be compared with, before anything is built.
 * @throws CommandFailure for a folder of `--against` without a manifest, and for a site to be replaced whose
 * manifest is gone, where no other is given
 */
export function earlierSites(final: string, { against, accept = [] }: Comparing): EarlierSites {
  const replaced = stands(final) ? readManifest(final) : null
  if (replaced === null && against === undefined && markerOf(final)?.state === 'whole')
    throw new CommandFailure(
      `${final} holds a site without its manifest.json: a certificate lost since would go unnoticed.`,
      EXIT.failed,
      'restore the site from a backup, or give a good copy of it with --against DIR',
    )
  const sites = [
    ...(replaced === null ? [] : [earlierSite(final, replaced)]),
    ...(against === undefined ? [] : [earlierSite(against, manifestAt(against))]),
  ]
  return {
    losses: (state, asOf) =>
      sites.length === 0
        ? [NOTHING]
        : sites.flatMap(({ from, asOf: before, takeIssued }) =>
            heldAgainst(takeIssued(), state(), { from, accept, days: { before, after: asOf } }),
          ),
    vanished: (manifest) => sites.flatMap(({ from, pages }) => vanishedLines(pages, manifest, from)),
  }
}

interface EarlierSite {
  readonly from: string
  readonly asOf: string
  /** Addresses of its pages. */
  readonly pages: readonly string[]
  /** Gives it away, for the lots of a large site are many. @throws RangeError where it is asked again */
  readonly takeIssued: () => IssuedState
}

function earlierSite(from: string, manifest: Manifest): EarlierSite {
  let held: IssuedState | null = { lots: manifest.lots, records: manifest.records }
  const takeIssued = () => {
    if (held === null) throw new RangeError('takeIssued needs a site that was not asked before')
    const own = held
    held = null
    return own
  }
  return { from, asOf: manifest.asOf, pages: pagesAmong(Object.keys(manifest.files)), takeIssued }
}

/** The manifest of a folder given with `--against`. @throws CommandFailure where it has none */
export function manifestAt(folder: string): Manifest {
  const isFolder = statSync(folder, { throwIfNoEntry: false })?.isDirectory() === true
  const manifest = isFolder ? readManifest(folder) : null
  if (manifest !== null) return manifest
  throw new CommandFailure(
    isFolder ? `${folder} holds no manifest.json.` : `${folder} is no folder.`,
    EXIT.wrongUse,
    'give the folder of a site that was built, or a copy of its manifest.json in a folder',
  )
}
