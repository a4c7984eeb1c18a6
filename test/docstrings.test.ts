/** House rule 7, as far as a program can hold it: what the docstrings of core's exported functions must say. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const CORE = resolve(import.meta.dirname, '../src/core')

/** What a function lacks: "purpose", "@param value", "@param older: no such argument", "@returns", "null", … */
function lacking(fn: ts.FunctionDeclaration, file: ts.SourceFile): string[] {
  const comment = ts.getJSDocCommentsAndTags(fn).find(ts.isJSDoc)
  const text = comment?.getText(file) ?? ''
  const described = [...text.matchAll(/@param\s+([\w$]+(?:,[\w$]+)*)/g)].flatMap(([, names]) =>
    (names ?? '').split(','),
  )
  const known = fn.parameters.flatMap((parameter) => namesOf(parameter, file))
  const returns = fn.type === undefined ? [] : alternatives(fn.type)
  return [
    ...(comment?.comment === undefined ? ['purpose'] : []),
    ...fn.parameters
      .flatMap((parameter) => bareNames(parameter, file))
      .filter((name) => !described.includes(name))
      .map((name) => `@param ${name}`),
    ...described
      .filter((name) => !known.includes(name) && !fn.parameters.some(isDestructured))
      .map((name) => `@param ${name}: no such argument`),
    ...(returns.some(isNumber) && !text.includes('@returns') ? ['@returns'] : []),
    ...['null', 'undefined'].filter(
      (nothing) => returns.some((type) => type.getText(file) === nothing) && !text.includes(nothing),
    ),
    ...(throwsRangeError(fn, file) && !text.includes('@throws RangeError') ? ['@throws RangeError'] : []),
  ]
}

/** Arguments that their type says nothing of: a number, a text, a truth value, or a list or table of such. */
function bareNames({ name, type }: ts.ParameterDeclaration, file: ts.SourceFile): string[] {
  if (type === undefined) return []
  if (ts.isTypeLiteralNode(type)) {
    const bare = type.members
      .filter(ts.isPropertySignature)
      .filter((member) => member.type !== undefined && isBare(member.type))
      .map((member) => member.name.getText(file))
    // An object that keeps its name may be described as one.
    return ts.isIdentifier(name) && bare.length > 0 ? [name.text] : bare
  }
  return isBare(type) ? [name.getText(file)] : []
}

/** Its own name, and the members of an object written out in its place. */
function namesOf({ name, type }: ts.ParameterDeclaration, file: ts.SourceFile): string[] {
  const members = type !== undefined && ts.isTypeLiteralNode(type) ? type.members : []
  return [name, ...members.map((member) => member.name)].flatMap((one) => one?.getText(file) ?? [])
}

/** An argument taken apart where it is received has no name of its own: any will do. */
function isDestructured({ name }: ts.ParameterDeclaration): boolean {
  return !ts.isIdentifier(name)
}

const BARE = [ts.SyntaxKind.NumberKeyword, ts.SyntaxKind.StringKeyword, ts.SyntaxKind.BooleanKeyword]
const CONTAINERS = /^(?:Readonly|Partial|Readonly(?:Array|Map|Set)|Array|Map|Set|Iterable|Record)$/

function isBare(type: ts.TypeNode): boolean {
  if (ts.isTypeOperatorNode(type) || ts.isParenthesizedTypeNode(type)) return isBare(type.type)
  if (ts.isArrayTypeNode(type)) return isBare(type.elementType)
  if (ts.isUnionTypeNode(type)) return type.types.some(isBare)
  if (ts.isTupleTypeNode(type)) return type.elements.some(isBare)
  if (ts.isTypeReferenceNode(type) && CONTAINERS.test(type.typeName.getText()))
    return isBare(type.typeArguments?.at(-1) ?? type)
  return BARE.includes(type.kind)
}

function isNumber(type: ts.TypeNode): boolean {
  return type.kind === ts.SyntaxKind.NumberKeyword
}

function alternatives(type: ts.TypeNode): readonly ts.TypeNode[] {
  return ts.isUnionTypeNode(type) ? type.types : [type]
}

/** In its own body, or in a function of the same file that it calls. */
function throwsRangeError(
  fn: ts.FunctionDeclaration,
  file: ts.SourceFile,
  seen = new Set<ts.Node>(),
): boolean {
  if (seen.has(fn)) return false
  seen.add(fn)
  const inside = (node: ts.Node): boolean => {
    if (ts.isThrowStatement(node)) return node.getText(file).includes('new RangeError')
    const called = ts.isIdentifier(node)
      ? functionsOf(file).find((one) => one.name?.text === node.text)
      : undefined
    if (called !== undefined && throwsRangeError(called, file, seen)) return true
    return ts.forEachChild(node, inside) ?? false
  }
  return fn.body !== undefined && inside(fn.body)
}

function functionsOf(file: ts.SourceFile): ts.FunctionDeclaration[] {
  return file.statements.filter(ts.isFunctionDeclaration)
}

/** Each exported function of a text that lacks something, with what it lacks. */
function lackingIn(name: string, text: string): string[] {
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true)
  return functionsOf(file)
    .filter((fn) => fn.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false)
    .map((fn) => ({ fn, lacks: lacking(fn, file) }))
    .filter(({ lacks }) => lacks.length > 0)
    .map(({ fn, lacks }) => `${name}: ${fn.name?.text}: ${lacks.join(', ')}`)
}

describe('docstrings of core', () => {
  it('say the purpose, every argument that its type leaves bare, a number returned, null or undefined, and a RangeError thrown', () => {
    const files = readdirSync(CORE, { recursive: true, encoding: 'utf8' }).filter((file) =>
      file.endsWith('.ts'),
    )
    expect(files.flatMap((file) => lackingIn(file, readFileSync(join(CORE, file), 'utf8')))).toEqual([])
  })
})

describe('the rule itself', () => {
  const lacks = (text: string) => lackingIn('x.ts', text).map((line) => line.replace(/^x\.ts: \w+: /, ''))

  it('asks for a purpose before the first tag', () => {
    expect(lacks('export function of(lot: Lot): Result {}')).toEqual(['purpose'])
    expect(lacks('/** @param lot of a source */ export function of(lot: Lot): Result {}')).toEqual([
      'purpose',
    ])
    expect(lacks('/** What a lot has. */ export function of(lot: Lot): Result {}')).toEqual([])
  })
  it('asks for numbers, texts and lists of them, alone or in an object written out, and for no named type', () => {
    const one =
      'export function of(a: Lot, b: readonly number[], { c }: { c: string | null; d: Lot }): Lot {}'
    expect(lacks(`/** What. */ ${one}`)).toEqual(['@param b, @param c'])
    expect(lacks(`/** What.\n * @param b,c any */ ${one}`)).toEqual([])
  })
  it('refuses an argument that is gone', () => {
    expect(lacks('/** What.\n * @param gone any */ export function of(lot: Lot): Lot {}')).toEqual([
      '@param gone: no such argument',
    ])
  })
  it('asks what a number is, and when nothing is returned', () => {
    expect(lacks('/** What. */ export function of(lot: Lot): number | null {}')).toEqual(['@returns, null'])
    expect(
      lacks('/** What.\n * @returns MPa; null for none */ export function of(lot: Lot): number | null {}'),
    ).toEqual([])
  })
  it('asks for a RangeError that the function or one below it in the file throws', () => {
    const below = 'function check(): void { throw new RangeError("no") }'
    expect(lacks(`/** What. */ export function of(lot: Lot): Lot { check() }\n${below}`)).toEqual([
      '@throws RangeError',
    ])
    expect(lacks(`${below} function other(): void {}`)).toEqual([])
  })
})
