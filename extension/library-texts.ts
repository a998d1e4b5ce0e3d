import { type TextDocumentContentProvider, type Uri, Disposable, l10n, workspace } from 'vscode';
import type { LanguageClient } from './language-client.js';
import { GetLibraryText, LIBRARY_SCHEME } from '../language/server/protocol.js';

/** Shows the built-in species library, read-only, when "go to definition" leads there. */
export class LibraryTexts implements TextDocumentContentProvider, Disposable {
  private readonly registration: Disposable;

  constructor(private readonly client: LanguageClient) {
    this.registration = workspace.registerTextDocumentContentProvider(LIBRARY_SCHEME, this);
  }

  async provideTextDocumentContent(uri: Uri): Promise<string> {
    const asked = this.client.code2ProtocolConverter.asUri(uri);
    const found = await this.client.sendRequest(GetLibraryText, { uri: asked });
    return found?.text ?? `// ${l10n.t('The library has no such page.')}\n`;
  }

  dispose(): void {
    this.registration.dispose();
  }
}
