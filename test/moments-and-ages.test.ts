import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const ROOT = resolve(import.meta.dirname, '..')
const SRC = join(ROOT, 'src')

/** What orders or tells apart by text or by identity where it is done to a Moment or an Age. */
const OPERATORS = new Set(['<', '>', '<=', '>=', '===', '!=='])
const METHODS = new Set(['includes', 'indexOf', 'lastIndexOf', 'sort', 'toSorted'])
const KEYED = new Set(['Map', 'Set', 'ReadonlyMap', 'ReadonlySet'])

function program(): ts.Program {
  const { config } = ts.readConfigFile(join(ROOT, 'tsconfig.json'), ts.sys.readFile)
  const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, ROOT)
  return ts.createProgram(
    fileNames.filter((file) => file.startsWith(SRC)),
    options,
  )
}

function isTime(type: ts.Type | undefined): boolean {
  if (type === undefined) return false
  const parts = type.isUnion() ? type.types : [type]
  return parts.some(({ symbol }) => {
    const [declared] = symbol?.declarations ?? []
    return declared !== undefined && ts.isClassDeclaration(declared) && /^(Moment|Age)$/.test(symbol.name)
  })
}

/** Places in the program where a moment or an age is compared by anything but its own functions. */
function comparisons(source: ts.SourceFile, checker: ts.TypeChecker): string[] {
  const found: string[] = []
  const typeOf = (node: ts.Node) => checker.getTypeAtLocation(node)
  const isNothing = (node: ts.Node) => /^(undefined|null)$/.test(node.getText())
  const compares = (node: ts.Node): boolean => {
    if (ts.isBinaryExpression(node))
      return (
        OPERATORS.has(node.operatorToken.getText()) &&
        ![node.left, node.right].some(isNothing) &&
        [node.left, node.right].some((side) => isTime(typeOf(side)))
      )
    if (ts.isTypeReferenceNode(node) || ts.isNewExpression(node)) {
      const type = typeOf(node)
      if (!KEYED.has(type.symbol?.name ?? '')) return false
      return isTime(checker.getTypeArguments(type as ts.TypeReference)[0])
    }
    if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return false
    const { name, expression } = node.expression
    const bySort = /sort/i.test(name.text) && node.arguments.length > 0
    return METHODS.has(name.text) && !bySort && isTime(typeOf(expression).getNumberIndexType())
  }
  const visit = (node: ts.Node): void => {
    if (compares(node)) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart())
      found.push(`${relative(SRC, source.fileName)}:${line + 1} ${node.getText()}`)
    }
    ts.forEachChild(node, visit)
  }
  visit(source)
  return found
}

describe('moments and ages', () => {
  it('are compared by their own functions alone, never by their texts or as objects', {
    timeout: 60_000,
  }, () => {
    const built = program()
    const checker = built.getTypeChecker()
    const sources = built.getSourceFiles().filter(({ fileName }) => fileName.startsWith(SRC))
    expect(sources.length).toBeGreaterThan(300)
    expect(sources.flatMap((source) => comparisons(source, checker))).toEqual([])
  })

  it('are never cut out of texts outside the files that read them', () => {
    const cut = /\.(?:slice|substring)\((?:0, (?:4|7|10)|5, 7|8, 10|11, 16)\)/
    const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) =>
      /\.(?:ts|astro)$/.test(file),
    )
    const cutters = files.filter((file) => cut.test(readFileSync(join(SRC, file), 'utf8')))
    // Four of the units that a message names.
    expect(cutters.sort()).toEqual(['core/measure/moment.ts', 'records/criteria/limits.ts'])
  })
})
