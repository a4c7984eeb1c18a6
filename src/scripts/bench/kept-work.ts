/** Unsaved work, kept in this browser until it is saved or discarded: one entry a lot, under the site's own address. */
export interface KeptWork {
  /** SOURCE/LOT */
  readonly lot: string
  readonly text: string
  /** The set it was judged under. */
  readonly under: string
}

/** What of the browser's storage is used. */
export type Storage = Pick<globalThis.Storage, 'getItem' | 'setItem' | 'removeItem'>

export interface Keeper {
  /** @returns whether it could be kept: storage may be full, or closed to the page */
  readonly keep: (work: KeptWork) => boolean
  readonly kept: (lot: string) => KeptWork | undefined
  /** The lot that was worked on last. */
  readonly last: () => KeptWork | undefined
  readonly discard: (lot: string) => void
}

/**
 * @param site base address of the site: two sites of one host keep apart
 * @param open asks the browser for its storage, which may refuse it
 */
export function keeperOf(site: string, open: () => Storage): Keeper {
  const keyOf = (lot: string) => `bench ${site} ${lot}`
  const last = `bench ${site}`
  const kept = (lot: string) => workIn(attempt(() => open().getItem(keyOf(lot)), null))
  return {
    keep: (work) =>
      attempt(() => {
        open().setItem(keyOf(work.lot), JSON.stringify(work))
        open().setItem(last, work.lot)
        return true
      }, false),
    kept,
    last: () => {
      const lot = attempt(() => open().getItem(last), null)
      return lot === null ? undefined : kept(lot)
    },
    discard: (lot) => {
      attempt(() => {
        open().removeItem(keyOf(lot))
        if (open().getItem(last) === lot) open().removeItem(last)
      }, undefined)
    },
  }
}

function attempt<T>(use: () => T, otherwise: T): T {
  try {
    return use()
  } catch {
    return otherwise
  }
}

function workIn(text: string | null): KeptWork | undefined {
  const work = attempt<unknown>(() => (text === null ? null : JSON.parse(text)), null)
  return isWork(work) ? work : undefined
}

function isWork(work: unknown): work is KeptWork {
  return (
    typeof work === 'object' &&
    work !== null &&
    ['lot', 'text', 'under'].every((key) => typeof (work as Record<string, unknown>)[key] === 'string')
  )
}
