/** npm run build: writes the site. */
import { countWords } from '../words/numbers.ts'
import { defined } from '../core/measure/defined.ts'
import type { Moment } from '../core/measure/moment.ts'
import { Option } from 'commander'
import { dirname } from 'node:path'
import { buildSite } from './build-site.ts'
import { keptReadings } from './kept-readings.ts'
import {
  addressOption,
  command,
  comparing,
  dateOption,
  EXIT,
  folderOption,
  run,
  usualOut,
} from './program.ts'
import { readGoodContent, readPublishable } from './read-content.ts'

await run(async () => {
  const options = comparing(command('build', 'Build the certificate site.'))
    .option(
      '--out <folder>',
      'where the site is written: dist, or dist-internal for --audience internal',
      folderOption,
    )
    .option('--as-of <date>', 'read the records as of this date', dateOption)
    .option('--address <url>', 'address of the site in place of the one in site.yaml', addressOption)
    .option(
      '--fresh',
      'read every record and document and make every page and data file anew, those too that have not changed',
    )
    .addOption(
      new Option('--audience <who>', 'who will read the site')
        .choices(['public', 'internal'])
        .default('public'),
    )
    .parse()
    .opts<{
      content: string
      out?: string
      against?: string
      accept?: string[]
      asOf?: Moment
      address?: string
      fresh?: boolean
      audience: 'public' | 'internal'
    }>()
  const read = options.audience === 'public' ? readPublishable : readGoodContent
  const out =
    options.out ?? usualOut(options.content, options.audience === 'public' ? 'dist' : 'dist-internal')
  const { before, issued, end } = keptReadings({
    beside: dirname(out),
    content: options.content,
    fresh: options.fresh === true,
  })
  const records = read(
    options.content,
    'Nothing was built; the output folder is as it was.',
    defined({ before, issued, asked: options.asOf }),
  )
  const built = await buildSite(records, { ...options, out, atOutput: end })
  process.stdout.write(
    `${countWords(built.edition.lots.size, 'lot')}, ${countWords(built.pages, 'page')} in ${built.folder}\n${[...built.drawnLines, ...built.notes].map((line) => `${line}\n`).join('')}`,
  )
  return EXIT.well
})
