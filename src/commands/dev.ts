/**
 * npm run dev: serves the pages and computes them anew when a record is saved; diagnostics show in the page.
 */
import { currentEdition } from '../edition/shape/slot.ts'
import { devPages } from './dev-pages.ts'
import { DevRecords } from './dev-records.ts'
import { onInterruption } from './interruption.ts'
import { makeStage } from './page-stage.ts'
import { command, EXIT, HOME, openLine, portOption, run } from './program.ts'
import { watchTree } from './watch-tree.ts'

await run(async () => {
  process.env['ASTRO_TELEMETRY_DISABLED'] = '1'
  const options = command('dev', 'Serve the site and reload it when a record is saved.')
    .option('--port <number>', 'port to serve on', portOption, 4321)
    .parse()
    .opts<{ content: string; port: number }>()
  const records = new DevRecords(options.content)
  const pages = devPages(() => records.fault)
  const stage = makeStage(HOME)
  onInterruption(stage.remove)
  // What is refused before this is told without Astro, which is half of all that this command reads.
  const { dev } = await import('astro')
  const server = await dev({
    ...stage.place,
    base: currentEdition().address.base,
    server: { port: options.port },
    logLevel: 'warn',
    integrations: [pages.integration],
  })
  watchTree(options.content, () => {
    records.load()
    pages.reload()
  })
  process.stdout.write(openLine(`http://localhost:${server.address.port}${currentEdition().address.base}`))
  return EXIT.well
})
