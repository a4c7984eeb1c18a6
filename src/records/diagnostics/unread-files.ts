/** Diagnostics for what lies in the content folder and is not read. */
import type { Code } from './codes.ts'
import type { Diagnostic } from './diagnostic.ts'
import type { Unread } from '../files.ts'

/** A fault of a whole file. */
export interface FileFault {
  readonly code: Code
  readonly severity: 'error' | 'warning'
  readonly message: string
  readonly mend: string
}

export const UNREAD: Readonly<Record<Unread['why'], FileFault>> = {
  outside: {
    code: 'file-unexpected',
    severity: 'error',
    message: 'the link leads out of the content folder',
    mend: 'put the file itself here',
  },
  'folder-link': {
    code: 'file-unexpected',
    severity: 'error',
    message: 'the link leads to a folder, which is not followed',
    mend: 'put the folder itself here',
  },
  'named-as-file': {
    code: 'file-unexpected',
    severity: 'error',
    message: 'this is a folder, named as a record is; nothing in it is read',
    mend: 'put the record here as a file, or give the folder another name',
  },
  unreadable: {
    code: 'file-unreadable',
    severity: 'error',
    message: 'this is not a folder, or it cannot be read',
    mend: 'put the folder back, or check its permissions',
  },
  'no-file': {
    code: 'file-unreadable',
    severity: 'error',
    message: 'this is not a regular file',
    mend: 'put a text file here, or remove it',
  },
}

/** A fault of a whole file stands at its beginning. */
export function fileFault(file: string, fault: FileFault): Diagnostic {
  return { ...fault, file, line: 1, column: 1 }
}
