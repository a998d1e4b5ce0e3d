import { type Event, type TextDocumentContentProvider, Disposable, EventEmitter, Uri, l10n, workspace } from 'vscode';
import type { LanguageClient } from './language-client.js';
import { GetResolvedText } from '../language/server/protocol.js';
import type { Instruments } from './folder-instruments.js';

const SCHEME = 'bookmatch-resolved';

/** Where VS Code finds an instrument written out in full, read-only. */
export function resolvedUri(name: string): Uri {
  // The last word of the path is what the tab says: it must not look like the file the recipe stands in.
  const title = l10n.t('{0}, written out in full', name);
  return Uri.from({ scheme: SCHEME, path: `/${title}.bookmatch`, query: name });
}

/** Serves the resolved texts, and has open ones read again when an edit may have changed them. */
export class ResolvedTexts implements TextDocumentContentProvider, Disposable {
  private readonly changed = new EventEmitter<Uri>();
  readonly onDidChange: Event<Uri> = this.changed.event;
  private readonly parts: Disposable;

  constructor(
    private readonly client: LanguageClient,
    instruments: Instruments,
  ) {
    this.parts = Disposable.from(
      this.changed,
      workspace.registerTextDocumentContentProvider(SCHEME, this),
      instruments.onDidChange(() => this.refresh()),
    );
  }

  async provideTextDocumentContent(uri: Uri): Promise<string> {
    const name = nameIn(uri);
    const resolved = await this.client.sendRequest(GetResolvedText, { name });
    return resolved?.text ?? `// ${l10n.t('There is no {0} in the open folders any more.', name)}\n`;
  }

  dispose(): void {
    this.parts.dispose();
  }

  private refresh(): void {
    for (const { uri } of workspace.textDocuments) if (uri.scheme === SCHEME) this.changed.fire(uri);
  }
}

function nameIn(uri: Uri): string {
  return uri.query;
}
