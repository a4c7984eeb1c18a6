/** npm start: builds the site and serves it on this machine. */
import { countWords } from '../words/numbers.ts'
import { buildSite } from './build-site.ts'
import { command, comparing, EXIT, folderOption, openLine, portOption, run, usualOut } from './program.ts'
import { readPublishable } from './read-content.ts'
import { serve } from './serve.ts'

await run(async () => {
  const options = comparing(command('start', 'Build the certificate site and serve it on this machine.'))
    .option('--out <folder>', 'where the site is written; by default dist', folderOption)
    .option('--port <number>', 'port to serve on', portOption, 4321)
    .parse()
    .opts<{ content: string; out?: string; port: number; against?: string; accept?: string[] }>()
  const records = readPublishable(options.content, 'Nothing was built; the output folder is as it was.')
  const out = options.out ?? usualOut(options.content, 'dist')
  const built = await buildSite(records, { ...options, out, audience: 'public' })
  await serve(built.folder, built.edition.address.base, options.port)
  const address = `http://localhost:${options.port}${built.edition.address.base}`
  process.stdout.write(
    `${countWords(built.edition.lots.size, 'lot')}, ${countWords(built.pages, 'page')}\n${built.notes.map((line) => `${line}\n`).join('')}${openLine(address)}`,
  )
  return EXIT.well
})
