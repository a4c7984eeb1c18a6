/** Lots as somebody may have written them: any part of the schema, comments, odd digits, quotes, both styles of YAML. */
import fc from 'fast-check'
import { type Plain, writeYaml } from '../../../src/records/edit/write-yaml.ts'
import {
  choicesOf,
  type FormNode,
  hasOwnKeys,
  isMapping,
  isShort,
  itemOf,
  lotNode,
  memberOf,
  membersOf,
  requiredIn,
} from '../../../src/records/form/form-node.ts'

const TEXT = fc.oneof(
  fc.constantFrom(
    '78.40 kN',
    '1450 t',
    '2026-03-11',
    '2026-03-11T09:20',
    '007',
    'yes',
    '1e3',
    '< 0.1 %',
    "G. O'Shea",
  ),
  fc.string({ minLength: 1, maxLength: 12 }).map((text) => text.replaceAll(/[^\x21-\x7e]/g, 'x')),
)

function memberValue(node: FormNode, depth: number): fc.Arbitrary<Plain> {
  const item = itemOf(node)
  if (item !== undefined) return fc.array(memberValue(item, depth + 1), { minLength: 1, maxLength: 3 })
  if (!isMapping(node)) return plainOf(node)
  return isShort(node) ? fc.oneof(TEXT, mappingOf(node, depth)) : mappingOf(node, depth)
}

function plainOf(node: FormNode): fc.Arbitrary<Plain> {
  const choices = choicesOf(node)
  if (choices !== undefined) return fc.constantFrom(...choices)
  return node.node['type'] === 'number' ? fc.integer({ min: 1, max: 60 }) : TEXT
}

function mappingOf(node: FormNode, depth: number): fc.Arbitrary<Plain> {
  const required = requiredIn(node)
  const known = membersOf(node)
  const members = Object.fromEntries(
    known
      // Of sixty results a few are enough, and of what lies deep only what must be written.
      .filter(
        ([key], place) => required.includes(key) || (depth < 4 && (known.length < 30 || place % 9 === 0)),
      )
      .map(([key, member]) => [key, memberValue(member, depth + 1)]),
  )
  const own = memberOf(node, 'a')
  const written = fc.record(members, { requiredKeys: [...required] }) as fc.Arbitrary<{
    [key: string]: Plain
  }>
  if (!hasOwnKeys(node) || own === undefined) return written.filter((value) => 0 < Object.keys(value).length)
  return fc.dictionary(fc.constantFrom('a', 'b', 'coal-only', 'x1'), memberValue(own, depth + 1), {
    minKeys: 1,
  })
}

/** A lot's text with a remark behind some of its lines and lines of remarks between them. */
export const LOT_TEXTS: fc.Arbitrary<string> = fc
  .tuple(mappingOf(lotNode(), 0), fc.infiniteStream(fc.nat({ max: 9 })))
  .map(([value, chance]) =>
    writeYaml(value)
      .split('\n')
      .map((line) => {
        const roll = chance.next().value ?? 0
        // Behind a block of text a remark would be text.
        if (line === '' || 7 < roll || /[|>][+-]?$/.test(line)) return line
        return roll < 2 ? `${line}  # as read` : roll === 2 ? `${line}\n# between` : line
      })
      .join('\n'),
  )
