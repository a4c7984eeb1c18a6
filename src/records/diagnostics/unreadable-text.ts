/** Why a file of text cannot be read, and what to do about it. */
import { type FileText, LARGEST_BYTES } from '../files.ts'

export type TextFault = Extract<FileText, { readonly fault: unknown }>['fault']

export const UNREADABLE: Readonly<Record<TextFault, string>> = {
  missing: 'cannot be read',
  unreadable: 'cannot be read',
  'too-large': `is larger than ${LARGEST_BYTES / 1024 / 1024} MiB`,
  'not-utf8': 'is not UTF-8 text',
}

export const UNREADABLE_MEND: Readonly<Record<TextFault, string>> = {
  missing: 'check the file and its permissions',
  unreadable: 'check the file and its permissions',
  'too-large': 'take out what is no part of it: a record takes a few kilobytes',
  'not-utf8': 'save it as UTF-8',
}
