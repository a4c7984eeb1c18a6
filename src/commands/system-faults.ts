/** What the operating system refused, in words: a full disk is no programming error and shows no trace. */
import { getSystemErrorMap } from 'node:util'

const FAULTS: Readonly<Record<string, string>> = {
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  EROFS: 'the file system is read-only',
  ENOSPC: 'the disk is full',
  EFBIG: 'it would be larger than this user or this disk may have a file',
  EDQUOT: 'the quota of this user is used up',
  EISDIR: 'a folder stands in its place',
  ENOTDIR: 'a file stands in the place of its folder',
  EEXIST: 'a file stands in the place of its folder',
  ENOENT: 'it does not exist',
  EBUSY: 'it is in use, or another disk is mounted there',
  EXDEV: 'it lies on another disk',
  ELOOP: 'its links lead round in a circle',
  ENAMETOOLONG: 'its name is too long',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  EIO: 'the disk cannot be read or written',
}

/** Longest chain of causes that is followed. */
const DEEPEST_CAUSE = 5

/** What the file system refused, as the end of a sentence. */
export function faultWords(error: unknown): string {
  const { code = '', message } = error as NodeJS.ErrnoException
  return FAULTS[code] ?? message
}

/** The refusal of the system that an error is, or was caused by; undefined for a fault of the program. */
export function systemFault(error: unknown): NodeJS.ErrnoException | undefined {
  let cause = error
  for (let depth = 0; depth < DEEPEST_CAUSE && cause instanceof Error; depth++) {
    const { code, syscall } = cause as NodeJS.ErrnoException
    if (code !== undefined && Object.hasOwn(FAULTS, code) && syscall !== undefined) return cause
    const native = nativeFault(cause)
    if (native !== undefined) return native
    cause = cause.cause
  }
  return undefined
}

/** A refusal that the bundler met, which tells the system's number in its text alone. */
function nativeFault({ message }: Error): NodeJS.ErrnoException | undefined {
  const number = /\(os error (\d+)\)/.exec(message)?.[1]
  const known = getSystemErrorMap().get(-Number(number ?? Number.NaN))
  if (known === undefined || !Object.hasOwn(FAULTS, known[0])) return undefined
  return Object.assign(new Error(known[1]), { code: known[0], syscall: 'write' })
}

/** Whether the folder that the command was started in was removed. */
export function isCurrentFolderGone({ syscall }: NodeJS.ErrnoException): boolean {
  return syscall === 'uv_cwd'
}

/** What was to be done; a call that is not listed writes. */
const WORDS: Readonly<Record<string, string>> = {
  open: 'opened',
  scandir: 'opened',
  read: 'read',
  stat: 'read',
  lstat: 'read',
  readlink: 'read',
  realpath: 'read',
}

/** One sentence of what was refused, and where. */
export function systemSentence(fault: NodeJS.ErrnoException): string {
  if (isCurrentFolderGone(fault)) return 'The current folder no longer exists.'
  const what = WORDS[fault.syscall ?? ''] ?? 'written'
  return `${fault.path ?? 'The output'} cannot be ${what}: ${faultWords(fault)}.`
}
