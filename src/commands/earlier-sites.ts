/** The sites that a build is held against: the one it replaces, and one that the owner names. */
import { statSync } from 'node:fs'
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
   * Asked before a page is drawn, so that a loss is refused at once.
   * @param state of the new site, which is asked for only where there is an earlier one
   * @returns lines for the reader of the command @throws CommandFailure for a loss that nobody accepted
   */
  readonly losses: (state: () => IssuedState) => string[]
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
    ...(replaced === null ? [] : [{ from: final, manifest: replaced }]),
    ...(against === undefined ? [] : [{ from: against, manifest: manifestAt(against) }]),
  ]
  return {
    losses: (state) =>
      sites.length === 0
        ? [NOTHING]
        : sites.flatMap(({ from, manifest: before }) => heldAgainst(before, state(), { from, accept })),
    vanished: (manifest) =>
      sites.flatMap(({ from, manifest: before }) => vanishedLines(before, manifest, from)),
  }
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
