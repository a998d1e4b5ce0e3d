import { type Event, Disposable, EventEmitter, window } from 'vscode';
import type { InstrumentEntry } from '../language/server/protocol.js';
import type { Instruments } from './folder-instruments.js';

/**
 * The instrument the maker is working on: the one the cursor is in, and after the cursor has gone elsewhere (to a wood
 * set, a panel, another file) the one it was in last.
 */
export class RecipeInHand implements Disposable {
  private readonly changed = new EventEmitter<InstrumentEntry | undefined>();
  /** Another instrument, or the same after an edit anywhere in the folder. */
  readonly onDidChange: Event<InstrumentEntry | undefined> = this.changed.event;
  private readonly parts: Disposable;
  private entry: InstrumentEntry | undefined;
  private asked = 0;

  constructor(private readonly instruments: Instruments) {
    this.parts = Disposable.from(
      this.changed,
      window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (textEditor.document.languageId === 'bookmatch') this.look(false);
      }),
      window.onDidChangeActiveTextEditor(() => this.look(false)),
      instruments.onDidChange(() => this.look(true)),
    );
  }

  get current(): InstrumentEntry | undefined {
    return this.entry;
  }

  /** `edited`: tell of it even if it is the same instrument as before. */
  private look(edited: boolean): void {
    const asked = ++this.asked;
    this.find().then(
      (entry) => {
        if (asked !== this.asked) {
          // A later look is on its way and may not know of the edit.
          if (edited) this.changed.fire(this.entry);
          return;
        }
        const isOther = entry?.name !== this.entry?.name || entry?.kind !== this.entry?.kind;
        this.entry = entry;
        if (isOther || edited) this.changed.fire(entry);
      },
      () => undefined, // the server is not there yet; its first news brings the next look
    );
  }

  private async find(): Promise<InstrumentEntry | undefined> {
    const here = await this.instruments.atCursor(window.activeTextEditor);
    if (here) return here;
    return this.entry && (await this.instruments.named(this.entry.name));
  }

  dispose(): void {
    this.parts.dispose();
  }
}
