/** The only place that reads content from the disk. */
import { lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { join, sep } from 'node:path'

/** A record file's size at most: thousands of shipments fit, an endless file does not. */
export const LARGEST_BYTES = 4 * 1024 * 1024

export interface ContentFile { readonly path: string; readonly bytes: number }

export type FolderReading = { readonly files: readonly ContentFile[]; readonly outside: readonly string[] } | { readonly fault: string }
export type TextReading = { readonly text: string } | { readonly fault: 'missing' | 'unreadable' | 'too-large' | 'not-utf8' }

/** Every file below a content folder but those under issued/ and studies/, by path with forward slashes in code-unit order; links that lead out of the folder apart. */
export function listFolder(folder: string): FolderReading {
  try {
    if (!statSync(folder).isDirectory()) return { fault: 'is not a folder' }
    const root = realpathSync(folder)
    const files: ContentFile[] = []
    const outside: string[] = []
    const visit = (path: string) => {
      for (const entry of readdirSync(join(root, path), { withFileTypes: true })) {
        const name = path === '' ? entry.name : `${path}/${entry.name}`
        if (entry.name.startsWith('.') || name === 'issued' || name === 'studies') continue
        if (entry.isSymbolicLink() && !leadsInside(root, name)) outside.push(name)
        else if (statSync(join(root, name)).isDirectory()) visit(name)
        else files.push({ path: name, bytes: statSync(join(root, name)).size })
      }
    }
    visit('')
    return { files: files.sort((a, b) => (a.path < b.path ? -1 : 1)), outside: outside.sort() }
  } catch (error) {
    return { fault: (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'does not exist' : 'cannot be read' }
  }
}

function leadsInside(root: string, name: string): boolean {
  try {
    return realpathSync(join(root, name)).startsWith(`${root}${sep}`)
  } catch {
    return false
  }
}

const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** A content file's text; a byte order mark stays in it, so that columns are those of the file. */
export function readText(folder: string, path: string): TextReading {
  try {
    const full = join(folder, path)
    if (LARGEST_BYTES < lstatSync(full).size) return { fault: 'too-large' }
    const bytes = readFileSync(full)
    return decode(bytes)
  } catch (error) {
    return { fault: (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'missing' : 'unreadable' }
  }
}

function decode(bytes: Buffer): TextReading {
  try {
    return { text: decoder.decode(bytes) }
  } catch {
    return { fault: 'not-utf8' }
  }
}

/** Bytes of content/issued/SOURCE/LOT/N.json, which its digest is taken of; null where they cannot be read. */
export function readIssued(folder: string, lot: string, number: number): Buffer | null {
  try {
    const path = join(folder, 'issued', lot, `${number}.json`)
    return LARGEST_BYTES < lstatSync(path).size ? null : readFileSync(path)
  } catch {
    return null
  }
}
