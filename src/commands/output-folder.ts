/**
 * The output folder: written beside itself, checked, then swapped in by renaming, so that a failed or
 * interrupted build leaves the earlier site as it was.
 */
import { existsSync, mkdirSync, readdirSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join, resolve, sep } from 'node:path'
import { CommandFailure, EXIT } from './program.ts'

/** Written last into a finished output; its presence says "this folder is ours and whole". */
export const MARKER = '.certificate-site'

export interface OutputFolder {
  /** Where the build writes. */
  readonly next: string
  readonly final: string
}

/**
 * Finishes or undoes an interrupted swap, refuses a folder that is not ours, and makes an empty `DIR.next`.
 * @param folder the output folder asked for
 * @param kept folders that an output must neither hold nor lie in
 * @throws CommandFailure
 */
export function prepareOutput(folder: string, kept: readonly string[]): OutputFolder {
  const final = realPath(folder)
  for (const other of kept.map(realPath)) {
    if (within(final, other) || within(other, final))
      throw new CommandFailure(
        `The output folder ${final} holds or lies in ${other}.`,
        EXIT.wrongUse,
        'choose another folder with --out',
      )
  }
  recoverSwap(final)
  if (existsSync(final) && readdirSync(final).length > 0 && !existsSync(join(final, MARKER))) {
    throw new CommandFailure(
      `The output folder ${final} holds files that no build of this program wrote.`,
      EXIT.wrongUse,
      'choose another folder with --out, or empty this one yourself',
    )
  }
  const next = `${final}.next`
  mkdirSync(next, { recursive: true })
  return { next, final }
}

/** Puts the finished build in the place of the earlier one. */
export function swapIn({ next, final }: OutputFolder, program: string): void {
  writeFileSync(join(next, MARKER), `${program}\n`)
  if (existsSync(final)) renameSync(final, `${final}.old`)
  renameSync(next, final)
  rmSync(`${final}.old`, { recursive: true, force: true })
}

export function discard({ next }: OutputFolder): void {
  rmSync(next, { recursive: true, force: true })
}

function recoverSwap(final: string): void {
  const next = `${final}.next`
  const old = `${final}.old`
  if (!existsSync(final) && existsSync(join(next, MARKER))) renameSync(next, final)
  else if (!existsSync(final) && existsSync(join(old, MARKER))) renameSync(old, final)
  for (const leftover of [next, old]) {
    if (!existsSync(leftover)) continue
    if (leftover === old && !existsSync(join(old, MARKER)))
      throw new CommandFailure(
        `${old} stands in the way and was not written by this program.`,
        EXIT.wrongUse,
        'move it elsewhere',
      )
    rmSync(leftover, { recursive: true, force: true })
  }
}

function realPath(folder: string): string {
  const path = resolve(folder)
  if (existsSync(path)) return realpathSync(path)
  const parent = dirname(path)
  return parent === path ? path : join(realPath(parent), basename(path))
}

function within(inner: string, outer: string): boolean {
  return inner === outer || inner.startsWith(outer.endsWith(sep) ? outer : `${outer}${sep}`)
}
