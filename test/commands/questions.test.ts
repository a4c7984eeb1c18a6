import { PassThrough } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { siteFiles } from '../../src/commands/lay-out-site.ts'
import { CommandFailure, EXIT } from '../../src/commands/program.ts'
import { askingAt } from '../../src/commands/questions.ts'
import { TODAY } from './new-site-folder.ts'

/** A person at a terminal. @param answers each ended by Enter; the input ends after them */
function person(...answers: readonly string[]) {
  const [input, output] = [new PassThrough(), new PassThrough()]
  let shown = ''
  let given = 0
  output.on('data', (text: Buffer) => {
    shown += text.toString()
    // The next answer comes when a question stands there.
    if (!/\] $/.test(shown)) return
    const answer = answers[given++]
    if (answer === undefined) input.end()
    else input.write(`${answer}\n`)
  })
  return { asking: askingAt({ input, output }), shown: () => shown }
}

describe('askingAt', () => {
  it('takes what Enter gives, and asks again where an answer is at fault', async () => {
    const { asking, shown } = person('', 'three', '3')
    const fault = (answer: string) => (/^\d+$/.test(answer) ? undefined : `"${answer}" is no number.`)
    expect(await asking.ask({ text: 'Title', otherwise: 'Works' })).toBe('Works')
    expect(await asking.ask({ text: 'Number', otherwise: '1', fault })).toBe('3')
    asking.end()
    expect(shown()).toBe('Title [Works] Number [1] "three" is no number.\nNumber [1] ')
  })
  it('fails as wrong use where the input ends first', async () => {
    const { asking } = person('Works')
    await asking.ask({ text: 'Title', otherwise: '' })
    const failure = asking.ask({ text: 'Number', otherwise: '1' })
    await expect(failure).rejects.toThrow(
      /^The questions were not answered to their end; nothing was written\.\nfix: /,
    )
    await expect(failure).rejects.toBeInstanceOf(CommandFailure)
    await expect(failure).rejects.toMatchObject({ status: EXIT.wrongUse })
  })
})

describe('the questions of a new site', () => {
  it('ask what is not given, a class of the specification among them', async () => {
    const { asking, shown } = person(
      'Quay Slag',
      '1 Quay, Hill',
      'A. Mason',
      'manager',
      'slug',
      'slag',
      '',
      '',
      '',
      '',
    )
    const options = {
      name: 'Works',
      laboratory: 'Quay laboratory',
      standing: 'agency',
      units: 'US',
      persons: 'yes',
    } as const
    const { site } = await siteFiles('/none/works', options, { asking, today: TODAY })
    asking.end()
    expect(site).toMatchObject({
      title: 'Works',
      producer: {
        id: 'quay-slag',
        name: 'Quay Slag',
        address: ['1 Quay', 'Hill'],
        signatory: { name: 'A. Mason' },
      },
      laboratory: { id: 'quay-laboratory', standing: 'agency', address: ['1 Quay', 'Hill'] },
      source: { id: 'slag', name: 'Slag' },
      material: 'slag',
      class: '80',
      persons: true,
      lot: 'S-2026-001',
    })
    expect(site.governing.id).toBe('c989-18')
    expect(shown()).toContain('There is no kind of material "slug"; did you mean slag?')
    expect(shown()).not.toContain('Title of the site')
  })
  it('take an answer in other letters, and y for yes', async () => {
    const { asking } = person()
    const given = { ...ALL, class: 'f', units: 'us' as 'US', persons: 'Y' }
    const { site } = await siteFiles('/none/works', given, { asking, today: TODAY })
    expect(site).toMatchObject({ class: 'F', units: 'US', persons: true })
    asking.end()
  })
  it.each([
    [{ material: 'fly-ash' }, /^There is no kind of material "fly-ash"; did you mean coal-fly-ash/],
    [{ governing: 'c989-18' }, /^There is no specification for coal fly ash "c989-18"/],
    [{ class: 'X' }, /^There is no class "X"/],
    [{ producer: ' ' }, /^The answer says nothing/],
  ])('refuse an option that is at fault: %o', async (options, message) => {
    const { asking } = person()
    await expect(siteFiles('/none/works', { ...ALL, ...options }, { asking, today: TODAY })).rejects.toThrow(
      message,
    )
    asking.end()
  })
})

const ALL = {
  ...{ name: 'Works', producer: 'Hill', producerAddress: 'Hill', signatory: 'A. Mason', function: 'manager' },
  ...{ material: 'coal-fly-ash', governing: 'c618-23e1', class: 'F', source: 'Ash', laboratory: 'Quay' },
  ...{ standing: 'in-house', laboratoryAddress: 'Hill', units: 'SI' as const, persons: 'no' },
}
