import { type Uri, type WebviewPanel, Disposable, l10n, ViewColumn, window } from 'vscode';
import type { Instruments } from '../folder-instruments.js';
import { isRefusal } from '../refusal.js';
import type { FromPage, Kept, OldToPage, ToPage, Words } from './messages.js';
import { pagesFolder, panelPage } from './panel-page.js';

/** What one sort of panel is about. Everything is plain data, since it goes to the page and back as messages. */
export interface PanelKind<Subject, Content, W extends Words, Action> {
  /** `drawing`: its page is `panels/page/drawing.ts`, its view type `bookmatch.drawing` (in `activationEvents` too). */
  readonly name: string;
  /** Of the tab. */
  readonly title: (subject: Subject) => string;
  readonly words: () => W;
  /** Asked anew after every edit, and sent to the page when it says something else than before. */
  readonly content: (subject: Subject) => Promise<Content>;
  /** Carry out what the page asks for. What it gives is shown from then on: another subject, or the same. */
  readonly act: (action: Action, subject: Subject, content: Content) => Promise<Subject>;
  /** Whether what a page had kept can still be read. */
  readonly isSubject: (kept: unknown) => kept is Subject;
}

/**
 * A tab with a page of ours: at most one of each kind, beside the text, found again after the window is reloaded. A page
 * nobody sees is let go; it is loaded again, and says that it is ready, when its tab comes to the front.
 */
export class Panel<Subject, Content, W extends Words, Action> implements Disposable {
  private readonly type: string;
  private readonly parts: Disposable;
  private open: { readonly tab: WebviewPanel; subject: Subject } | undefined;
  private content: Content | undefined;
  /** The last message as text; empty while the page has none. */
  private sent = '';
  private asked = 0;

  constructor(
    private readonly extension: Uri,
    private readonly kind: PanelKind<Subject, Content, W, Action>,
    instruments: Instruments,
  ) {
    this.type = `bookmatch.${kind.name}`;
    this.parts = Disposable.from(
      instruments.onDidChange(() => void this.update()),
      instruments.onDidLose(() => void this.update()),
      window.registerWebviewPanelSerializer(this.type, {
        deserializeWebviewPanel: (tab, kept?: Partial<Kept<unknown, unknown>>) => {
          const subject = kept?.subject;
          if (this.open || !kind.isSubject(subject)) tab.dispose();
          else this.fill(tab, subject);
          return Promise.resolve();
        },
      }),
    );
  }

  /** What is shown; undefined while the panel is closed. */
  get subject(): Subject | undefined {
    return this.open?.subject;
  }

  /** Open the panel beside the text, or bring it to the front, with `subject` in it. The text keeps the focus. */
  show(subject: Subject): void {
    if (this.open) {
      this.open.tab.reveal(undefined, true);
      this.follow(subject);
    } else {
      const place = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      this.fill(window.createWebviewPanel(this.type, this.kind.title(subject), place), subject);
    }
  }

  /** Turn to another subject, if the panel is open at all. */
  follow(subject: Subject): void {
    if (!this.open) return;
    this.open.subject = subject;
    this.open.tab.title = this.kind.title(subject);
    void this.update();
  }

  /** As if it had been done on the page: for buttons in the title of the panel. */
  async act(action: Action): Promise<void> {
    await this.hear({ kind: 'act', action });
  }

  /** Ask for the content again, and send it if it says something else. */
  async update(): Promise<void> {
    const { open } = this;
    if (!open?.tab.visible) return;
    const asked = ++this.asked;
    const { subject } = open;
    try {
      const content = await this.kind.content(subject);
      // A later question is on its way, or the panel was closed meanwhile.
      if (asked !== this.asked || open !== this.open) return;
      this.content = content;
      const message: ToPage<Subject, Content, W> = { kind: 'show', subject, content, words: this.kind.words() };
      const written = JSON.stringify(message);
      if (written === this.sent) return;
      this.sent = written;
      await open.tab.webview.postMessage(message);
    } catch (error) {
      // No server to ask, or one that met a fault; its next news brings the next question.
      console.error(error);
      if (asked === this.asked && open === this.open) await this.tellOld(open.tab, error);
    }
  }

  /** What is shown stays, and says of itself that it is old. */
  private async tellOld({ webview }: WebviewPanel, error: unknown): Promise<void> {
    const why = isRefusal(error)
      ? error.message
      : l10n.t(
          'The server of Bookmatch does not answer: what is shown here may be out of date. Bookmatch: Restart starts it anew.',
        );
    this.sent = '';
    await webview.postMessage({ kind: 'old', why } satisfies OldToPage);
  }

  dispose(): void {
    this.parts.dispose();
    this.open?.tab.dispose();
  }

  private fill(tab: WebviewPanel, subject: Subject): void {
    const open = { tab, subject };
    this.open = open;
    this.content = undefined;
    this.sent = '';
    tab.webview.options = { enableScripts: true, localResourceRoots: [pagesFolder(this.extension)] };
    const listener = tab.webview.onDidReceiveMessage((message: FromPage<Action>) => void this.hear(message));
    tab.onDidDispose(() => {
      listener.dispose();
      if (this.open === open) this.open = undefined;
    });
    tab.title = this.kind.title(subject);
    tab.webview.html = panelPage(tab.webview, this.extension, this.kind.name, tab.title);
  }

  private async hear(message: FromPage<Action>): Promise<void> {
    if (message.kind === 'ready') {
      this.sent = '';
      await this.update();
    } else if (this.open && this.content !== undefined) {
      try {
        const { subject } = this.open;
        const wanted = await this.kind.act(message.action, subject, this.content);
        if (wanted !== subject) this.follow(wanted);
      } catch (error) {
        console.error(error);
      }
    }
  }
}
