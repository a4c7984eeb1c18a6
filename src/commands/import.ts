/** npm run import: takes a spreadsheet's rows into records of lots and control batches, by a map. */
import { importFile, type ImportOptions, mapAt } from './import-file.ts'
import { proposeMap } from './propose-map.ts'
import { CommandFailure, command, EXIT, run } from './program.ts'

interface Options extends ImportOptions {
  readonly map?: string
  readonly propose?: boolean
}

await run(() => {
  const program = command(
    'import',
    'Take the rows of a spreadsheet into records of lots and control batches.',
  )
    .argument('<file>', 'a spreadsheet: .xlsx or .csv')
    .option('--map <file>', 'the map that says which column gives what')
    .option('--propose', 'write a map from the headings of the file, to be corrected once')
    .option('--write', 'write the records; without it they are only shown')
    .option('--replace', 'let the file’s values take the place of those on record that differ')
    .option('--all', 'tell every fault and note, not one of each cause')
    .option('--records', 'print each record as it would be')
    .parse()
  const [file = ''] = program.args
  const options = program.opts<Options>()
  if (options.propose === true) return proposeMap(file, options)
  if (options.map === undefined)
    throw new CommandFailure('No map is named.', EXIT.wrongUse, 'give --map FILE; --propose writes one')
  return importFile(file, mapAt(options.map), options)
})
