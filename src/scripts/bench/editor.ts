/**
 * The editor of the record's text, loaded only on the bench page. It lives in a shadow root: its styles are sheets that the
 * root adopts, since the policy allows no style element.
 */
import { autocompletion, type CompletionContext, type CompletionResult } from '@codemirror/autocomplete'
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands'
import { yaml } from '@codemirror/lang-yaml'
import { syntaxTree } from '@codemirror/language'
import { type Diagnostic as Mark, lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint'
import { EditorState, RangeSetBuilder, type Text } from '@codemirror/state'
import {
  Decoration,
  type DecorationSet,
  drawSelection,
  EditorView,
  highlightActiveLine,
  keymap,
  lineNumbers,
  ViewPlugin,
  type ViewUpdate,
} from '@codemirror/view'
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import { keySuggestions, type SiteNames, valueSuggestions } from '../../records/form/suggestions.ts'
import { textPlace } from '../../records/form/text-place.ts'
import { changedStretch, type TextView } from './text-view.ts'

interface EditorParts {
  readonly typed: (text: string) => void
  readonly names: () => SiteNames
}

export function editorIn(place: HTMLElement, { typed, names }: EditorParts): TextView {
  const root = place.shadowRoot ?? place.attachShadow({ mode: 'open' })
  // What the form changes is shown, and is not told as if somebody had typed it.
  let showing = false
  const view = new EditorView({
    root,
    parent: root,
    state: EditorState.create({
      extensions: [
        ...[lineNumbers(), lintGutter(), history(), drawSelection(), highlightActiveLine()],
        ...[yaml(), COLOURS, THEME, EditorView.lineWrapping],
        autocompletion({ override: [(context) => suggested(context, names())] }),
        // Tab moves on to the next field: the page is walked through by keyboard.
        keymap.of([...defaultKeymap, ...historyKeymap, ...lintKeymap]),
        EditorView.contentAttributes.of({ 'aria-label': 'The record as YAML', tabindex: '0' }),
        EditorView.updateListener.of((update) => {
          if (update.docChanged && !showing) typed(update.state.doc.toString())
        }),
      ],
    }),
  })
  return {
    show: (text) => {
      const before = view.state.doc.toString()
      if (before === text) return
      showing = true
      view.dispatch({ changes: changedStretch(before, text) })
      showing = false
    },
    showFaults: (diagnostics) => {
      const { doc } = view.state
      view.dispatch(
        setDiagnostics(
          view.state,
          diagnostics.map((diagnostic) => markOf(doc, diagnostic)),
        ),
      )
    },
    goTo: (line, column) => {
      const at = offsetOf(view.state.doc, line, column)
      view.dispatch({ selection: { anchor: at }, scrollIntoView: true })
      view.focus()
    },
  }
}

function offsetOf(doc: Text, line: number, column: number): number {
  const found = doc.line(Math.min(Math.max(1, line), doc.lines))
  return Math.min(found.from + column - 1, found.to)
}

function markOf(doc: Text, { line, column, endColumn, severity, message, mend, code }: Diagnostic): Mark {
  const from = offsetOf(doc, line, column)
  const to = endColumn === undefined ? from : offsetOf(doc, line, endColumn)
  return { from, to: Math.max(from, to), severity, message: `${message}. To fix it: ${mend}`, source: code }
}

function suggested(context: CompletionContext, names: SiteNames): CompletionResult | null {
  const place = textPlace(context.state.doc.toString(), context.pos)
  if (place === null || (!context.explicit && place.typed === '')) return null
  const found = place.awaits === 'key' ? keySuggestions(place.path) : valueSuggestions(place.path, names)
  const options = found
    .filter(({ text }) => !place.taken.includes(text.replace(/: ?$/, '')))
    .map(({ text, label, help }) => ({
      label: text,
      ...(label === undefined ? {} : { detail: label }),
      info: help,
    }))
  return options.length === 0 ? null : { from: context.pos - place.typed.length, options }
}

const KEY = Decoration.mark({ class: 'key' })
const REMARK = Decoration.mark({ class: 'remark' })

/** Keys and remarks set apart from what was read at the bench. */
const COLOURS = ViewPlugin.fromClass(
  class {
    decorations: DecorationSet
    constructor(view: EditorView) {
      this.decorations = coloured(view)
    }
    update(update: ViewUpdate) {
      if (
        update.docChanged ||
        update.viewportChanged ||
        syntaxTree(update.startState) !== syntaxTree(update.state)
      )
        this.decorations = coloured(update.view)
    }
  },
  { decorations: ({ decorations }) => decorations },
)

function coloured(view: EditorView): DecorationSet {
  const builder = new RangeSetBuilder<Decoration>()
  for (const { from, to } of view.visibleRanges)
    syntaxTree(view.state).iterate({
      from,
      to,
      enter: ({ name, from: start, to: end }) => {
        if (name === 'Key') builder.add(start, end, KEY)
        else if (name === 'Comment') builder.add(start, end, REMARK)
      },
    })
  return builder.finish()
}

/** The page's own colours reach into the shadow root as custom properties. */
const THEME = EditorView.theme({
  '&': { height: '100%', color: 'var(--ink)', backgroundColor: 'var(--paper)', fontSize: '0.875rem' },
  '&.cm-focused': { outline: '3px solid var(--accent)', outlineOffset: '2px' },
  '.cm-scroller': { overflow: 'auto', lineHeight: '1.5' },
  '.cm-content': { caretColor: 'var(--ink)', outline: 'none' },
  '.cm-cursor, .cm-dropCursor': { borderLeftColor: 'var(--ink)' },
  '.cm-gutters': {
    color: 'var(--soft)',
    backgroundColor: 'var(--wash)',
    borderRight: '1px solid var(--hair)',
  },
  '.cm-activeLine, .cm-activeLineGutter': { backgroundColor: 'var(--wash)' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': {
    background: 'var(--hair)',
  },
  '.key': { color: 'var(--accent)' },
  '.remark': { color: 'var(--soft)', fontStyle: 'italic' },
  '.cm-tooltip': { color: 'var(--ink)', backgroundColor: 'var(--paper)', border: '1px solid var(--soft)' },
  '.cm-tooltip-autocomplete > ul > li': { padding: '.3rem .5rem', lineHeight: '1.5' },
  '.cm-tooltip-autocomplete > ul > li[aria-selected]': { color: 'var(--paper)', background: 'var(--accent)' },
  '.cm-completionDetail': { fontStyle: 'normal', color: 'inherit' },
  '.cm-diagnostic-error': { borderLeftColor: 'var(--limit)' },
})
