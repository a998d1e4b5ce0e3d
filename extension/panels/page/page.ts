/// <reference lib="dom" />
/** The page's side of a panel: draws what the extension sends, keeps what the maker chose, sends what they want done. */
import { type TemplateResult, render } from 'lit';
import type { FromPage, Kept, OldToPage, ToPage, Words } from '../messages.js';
import './page.css';

interface Editor {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): Editor;

/** What a page draws from. */
export interface Shown<Subject, Content, W extends Words, View, Action> {
  readonly subject: Subject;
  readonly content: Content;
  readonly words: W;
  /** Choices made in the page; they outlive a reload. */
  readonly view: View;
  /** Choose otherwise, and draw again. */
  readonly look: (change: Partial<View>) => void;
  readonly act: (action: Action) => void;
}

/** Start the page. `draw` is called with everything each time anything is different; lit changes only what differs. */
export function openPage<Subject, Content, W extends Words, View extends object, Action>(
  first: View,
  draw: (shown: Shown<Subject, Content, W, View, Action>) => TemplateResult,
): void {
  const editor = acquireVsCodeApi();
  const kept = editor.getState() as Partial<Kept<Subject, View>> | undefined;
  const root = document.createElement('main');
  const old = document.createElement('p');
  old.className = 'old';
  old.setAttribute('role', 'status');
  old.hidden = true;
  document.body.append(old, root);
  let view: View = { ...first, ...kept?.view };
  let newest: ToPage<Subject, Content, W> | undefined;

  const send = (message: FromPage<Action>) => editor.postMessage(message);
  const act = (action: Action) => send({ kind: 'act', action });
  const look = (change: Partial<View>) => {
    view = { ...view, ...change };
    redraw();
  };
  const redraw = () => {
    if (!newest) return;
    const { subject, content, words } = newest;
    editor.setState({ subject, view } satisfies Kept<Subject, View>);
    render(draw({ subject, content, words, view, look, act }), root);
  };
  window.addEventListener('message', ({ data }: MessageEvent<ToPage<Subject, Content, W> | OldToPage>) => {
    old.hidden = data.kind !== 'old';
    root.classList.toggle('as-it-was', data.kind === 'old');
    if (data.kind === 'old') {
      old.textContent = data.why;
      return;
    }
    newest = data;
    redraw();
  });
  send({ kind: 'ready' });
}

/** `text` with what stands for `{0}`, `{1}` put in. */
export function fill(text: string, ...parts: readonly (string | number)[]): string {
  return text.replace(/\{(\d)\}/g, (_, index: string) => String(parts[Number(index)] ?? ''));
}

export interface Translator {
  readonly t: (english: string) => string;
}

/** Looks texts up in the editor's translations, sent by an extension that does not carry the page's texts itself. */
export function translator(translations: Words): Translator {
  const table = new Map(Object.entries(translations));
  return { t: (english) => table.get(english) ?? english };
}
