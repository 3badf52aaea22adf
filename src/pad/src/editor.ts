// The sides file as text: colors, completion, and errors in place.
import { autocompletion, completionKeymap, type CompletionContext } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { HighlightStyle, StreamLanguage, syntaxHighlighting } from '@codemirror/language';
import { lintGutter, setDiagnostics, type Diagnostic } from '@codemirror/lint';
import { EditorState, Transaction } from '@codemirror/state';
import { EditorView, keymap, lineNumbers } from '@codemirror/view';
import { tags } from '@lezer/highlight';
import { KEYWORDS } from './format';
import type { Notice } from './types';
import { say } from './words';

const language = StreamLanguage.define<{ atStart: boolean }>({
  startState: () => ({ atStart: true }),
  token(stream, state) {
    if (stream.sol()) state.atStart = true;
    if (stream.eatSpace()) return null;
    if (stream.match(/^#.*/)) return 'comment';
    if (stream.match(/^[0-9][0-9.,/]*(?:['’′]|["”″](?![^"]*"))?/)) return 'number';
    if (stream.match(/^["“”][^"“”]*["“”]?/)) return 'string';
    if (stream.match(/^[a-z]+/i)) {
      const first = state.atStart;
      state.atStart = false;
      return first ? 'keyword' : 'name';
    }
    stream.next();
    return null;
  },
});

const colors = HighlightStyle.define([
  { tag: tags.keyword, fontWeight: '600' },
  { tag: tags.string, color: 'var(--text-string)' },
  { tag: tags.number, color: 'var(--text-number)' },
  { tag: tags.comment, color: 'var(--quiet)', fontStyle: 'italic' },
]);

function complete(context: CompletionContext) {
  const word = context.matchBefore(/[a-z]+/i);
  if (!word || (word.from === word.to && !context.explicit)) return null;
  return { from: word.from, options: KEYWORDS.map((label) => ({ label, type: 'keyword' })) };
}

export class Editor {
  private view: EditorView;

  constructor(parent: HTMLElement, text: string, changed: (text: string) => void) {
    this.view = new EditorView({
      parent,
      state: EditorState.create({
        doc: text,
        extensions: [
          lineNumbers(),
          history(),
          lintGutter(),
          language,
          syntaxHighlighting(colors),
          autocompletion({ override: [complete], icons: false }),
          keymap.of([...completionKeymap, ...historyKeymap, ...defaultKeymap]),
          EditorView.lineWrapping,
          EditorView.contentAttributes.of({ 'aria-label': say('asText'), spellcheck: 'false', autocapitalize: 'off' }),
          EditorView.updateListener.of((update) => {
            const typed = update.transactions.some((one) => one.annotation(Transaction.remote) !== true);
            if (update.docChanged && typed) changed(update.state.doc.toString());
          }),
        ],
      }),
    });
  }

  text(text: string): void {
    const old = this.view.state.doc.toString();
    if (old === text) return;
    let from = 0;
    while (from < old.length && old[from] === text[from]) from++;
    let [end, to] = [old.length, text.length];
    while (end > from && to > from && old[end - 1] === text[to - 1]) (end--, to--);
    this.view.dispatch({
      changes: { from, to: end, insert: text.slice(from, to) },
      annotations: Transaction.remote.of(true),
    });
  }

  notices(notices: Notice[], use: (from: number, to: number, words: string) => void): void {
    const length = this.view.state.doc.length;
    const list: Diagnostic[] = notices.map((notice) => ({
      from: Math.min(notice.from, length),
      to: Math.min(notice.to, length),
      severity: notice.is_error ? 'error' : 'warning',
      message: [notice.message, ...notice.helps].join('\n'),
      actions: notice.mends.map(([from, to, words]) => ({
        name: say('use', { words }),
        apply: () => use(from, to, words),
      })),
    }));
    this.view.dispatch(setDiagnostics(this.view.state, list));
  }

  show(line: number): void {
    const at = this.view.state.doc.line(Math.min(line, this.view.state.doc.lines)).from;
    this.view.dispatch({ selection: { anchor: at }, scrollIntoView: true });
    this.view.focus();
  }
}
