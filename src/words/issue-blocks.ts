/** Why a fault elsewhere keeps a lot from being issued. */

/** What a file with a fault is to the lot, after its name. */
export const BLOCK_REASONS = {
  own: 'is its own record',
  'referred-to': 'the lot or its source uses',
  earlier: 'is a lot of the same source that was sampled before it',
  undated: 'is a lot of the same source, perhaps sampled before it: its dates cannot be read',
  scatter: 'counts in the scatter of a laboratory that tests for the source',
  unassigned: 'may belong to any lot',
} as const

export type BlockReason = keyof typeof BLOCK_REASONS

/** One line of a lot that may not be issued, without a full stop. */
export function blockWords(
  lot: string,
  blocks: readonly { readonly file: string; readonly reason: BlockReason }[],
): string {
  const faults = blocks.map(({ file, reason }) => `${file}, which ${BLOCK_REASONS[reason]}`)
  return `${lot} cannot be issued because of a fault in ${faults.join('; and in ')}`
}
