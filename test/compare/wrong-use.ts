/** Wrong use of the command: an unknown option or commit, or allowances that cannot be read. */
export class WrongUse extends Error {}
