/** General generators and a plain copy, given the files of a built site ready-made: what its bytes alone cost. */
import { cpSync, existsSync, mkdirSync, readFileSync } from 'node:fs'
import { execFileSync } from 'node:child_process'
import { join, relative, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { filesBelow, pagesBelow } from './bench-parts.ts'
import { CommandFailure, EXIT, ROOT } from './program.ts'

const PEERS = resolve(ROOT, 'bench/peers')
const ELEVENTY = '@11ty/eleventy'
const VERSION = '3.1.8'

/** What is used of Eleventy, which is no dependency of this project. */
interface EleventyModule {
  readonly Eleventy: new (
    input: string,
    output: string,
    options: { readonly quietMode: boolean; readonly config: (config: EleventyConfig) => void },
  ) => { readonly write: () => Promise<unknown> }
}

interface EleventyConfig {
  readonly addTemplate: (path: string, template: object) => void
  readonly addPassthroughCopy: (folders: Readonly<Record<string, string>>) => void
}

/** A page as its template gets it. */
interface PageData {
  readonly ready: ReadyPage
}

interface ReadyPage {
  readonly path: string
  readonly text: string
}

/** Every file copied, one after the other. */
export async function copying(_folder: string, site: string): Promise<Record<string, number>> {
  cpSync(site, join(site, '../copied'), { recursive: true })
  return { files: filesBelow(site).length }
}

/**
 * Eleventy writing every page from a template that prints it, and copying the data files and assets.
 * @throws CommandFailure where `getPeers` has not installed it
 */
export async function eleventy(_folder: string, site: string): Promise<Record<string, number>> {
  const main = join(PEERS, 'node_modules', ELEVENTY, 'src/Eleventy.js')
  if (!existsSync(main))
    throw new CommandFailure(
      `${ELEVENTY} is not installed for the bench.`,
      EXIT.failed,
      'run the bench where the package registry can be reached, or leave the part out with --parts',
    )
  const { Eleventy } = (await import(pathToFileURL(main).href)) as EleventyModule
  const pages = pagesBelow(site).map(
    (path): ReadyPage => ({ path: relative(site, path), text: readFileSync(path, 'utf8') }),
  )
  const input = join(site, '../eleventy-input')
  mkdirSync(input)
  const made = new Eleventy(input, join(site, '../eleventy'), {
    quietMode: true,
    config: (config) => {
      config.addTemplate('pages.11ty.js', template(pages))
      config.addPassthroughCopy({ [join(site, 'data')]: 'data', [join(site, '_astro')]: '_astro' })
    },
  })
  // It takes paths from where it was started.
  process.chdir(input)
  await made.write()
  return { pages: pages.length }
}

function template(pages: readonly ReadyPage[]): object {
  return {
    data: {
      pages,
      pagination: { data: 'pages', size: 1, alias: 'ready' },
      permalink: (data: PageData) => data.ready.path,
    },
    render: (data: PageData) => data.ready.text,
  }
}

/** Installs Eleventy in the bench's own folder, once. */
export function getPeers(): void {
  if (existsSync(join(PEERS, 'node_modules', ELEVENTY))) return
  mkdirSync(PEERS, { recursive: true })
  execFileSync('npm', ['install', '--no-save', '--prefix', PEERS, `${ELEVENTY}@${VERSION}`], {
    stdio: ['ignore', 'ignore', 'inherit'],
  })
}
