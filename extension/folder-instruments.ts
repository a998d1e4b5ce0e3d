import { type Event, type TextEditor, Disposable, EventEmitter, Position, Range } from 'vscode';
import { State } from 'vscode-languageclient';
import type { LanguageClient } from './language-client.js';
import { type InstrumentEntry, InstrumentsChanged, ListInstruments } from '../language/server/protocol.js';

/** The models, recipes and builds of the open folders, as the server knows them now. */
export class Instruments implements Disposable {
  private readonly changed = new EventEmitter<undefined>();
  /** An edit has been worked in: whatever was asked for before may be out of date. */
  readonly onDidChange: Event<undefined> = this.changed.event;
  private readonly lost = new EventEmitter<undefined>();
  /** The server is gone: whatever was asked for before is what was known last. */
  readonly onDidLose: Event<undefined> = this.lost.event;
  private readonly parts: Disposable;

  constructor(private readonly client: LanguageClient) {
    // The client keeps one listener for each kind of news, so everybody else listens here.
    this.parts = Disposable.from(
      this.changed,
      this.lost,
      client.onNotification(InstrumentsChanged, () => this.changed.fire(undefined)),
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Stopped) this.lost.fire(undefined);
      }),
    );
  }

  async all(): Promise<readonly InstrumentEntry[]> {
    return this.client.sendRequest(ListInstruments);
  }

  async named(name: string): Promise<InstrumentEntry | undefined> {
    return (await this.all()).find((entry) => entry.name === name);
  }

  /** The one whose definition the cursor is in. */
  async atCursor(editor: TextEditor | undefined): Promise<InstrumentEntry | undefined> {
    if (!editor) return undefined;
    return this.at(this.client.code2ProtocolConverter.asUri(editor.document.uri), editor.selection.active);
  }

  /** Those of the file in the editor, and all others. */
  async parted(
    editor: TextEditor | undefined,
  ): Promise<readonly [own: readonly InstrumentEntry[], others: readonly InstrumentEntry[]]> {
    const all = await this.all();
    const uri = editor && this.client.code2ProtocolConverter.asUri(editor.document.uri);
    return [all.filter((entry) => entry.uri === uri), all.filter((entry) => entry.uri !== uri)];
  }

  /** The one whose definition holds a place. */
  async at(
    uri: string,
    { line, character }: { readonly line: number; readonly character: number },
  ): Promise<InstrumentEntry | undefined> {
    return entryAt(await this.all(), uri, { line, character });
  }

  dispose(): void {
    this.parts.dispose();
  }
}

/** The one whose definition holds a place. */
export function entryAt<E extends Pick<InstrumentEntry, 'uri' | 'range'>>(
  entries: readonly E[],
  uri: string,
  { line, character }: { readonly line: number; readonly character: number },
): E | undefined {
  const here = new Position(line, character);
  return entries.find((entry) => entry.uri === uri && editorRange(entry).contains(here));
}

function editorRange({ range: { start, end } }: Pick<InstrumentEntry, 'range'>): Range {
  return new Range(new Position(start.line, start.character), new Position(end.line, end.character));
}
