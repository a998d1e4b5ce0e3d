import { type TextEditor, Position, Range } from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { type InstrumentEntry, ListInstruments } from '../language/server/protocol.js';

/** The models, recipes and builds of the open folders, as the server knows them now. */
export class Instruments {
  constructor(private readonly client: LanguageClient) {}

  async all(): Promise<readonly InstrumentEntry[]> {
    return this.client.sendRequest(ListInstruments);
  }

  async named(name: string): Promise<InstrumentEntry | undefined> {
    return (await this.all()).find((entry) => entry.name === name);
  }

  /** The one whose definition the cursor is in. */
  async atCursor(editor: TextEditor | undefined): Promise<InstrumentEntry | undefined> {
    if (!editor) return undefined;
    const uri = this.client.code2ProtocolConverter.asUri(editor.document.uri);
    const here = editor.selection.active;
    return (await this.all()).find((entry) => entry.uri === uri && editorRange(entry).contains(here));
  }
}

function editorRange({ range: { start, end } }: InstrumentEntry): Range {
  return new Range(new Position(start.line, start.character), new Position(end.line, end.character));
}
