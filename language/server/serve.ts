/**
 * The server: which request is answered by what. The Node and the browser process differ only in the connection and
 * in how they read files.
 */
import {
  CodeLensRefreshRequest,
  type Connection,
  DidChangeWatchedFilesNotification,
  type DidChangeWatchedFilesParams,
  type InitializeParams,
  type InitializeResult,
  type TextDocumentChangeEvent,
  TextDocumentSyncKind,
  TextDocuments,
  type WorkspaceFoldersChangeEvent,
} from 'vscode-languageserver';
import { answering, inFull, guarded } from './answering.js';
import { CODE_ACTION_KINDS, serveCodeActions } from './requests/code-actions.js';
import { LEGEND, serveSemanticTokens } from './requests/semantic-tokens-requests.js';
import { serveWays } from './requests/ways-requests.js';
import { serveAnotherParent } from './requests/another-parent-requests.js';
import { servePanels } from './requests/panel-requests.js';
import { serveReadings } from './requests/reading-requests.js';
import { servePlans } from './requests/plan-requests.js';
import type { PlanFiles } from '../reports/plan/plan-file.js';
import { serveOneInstrument } from './requests/one-instrument-requests.js';
import { serveCompletion } from './requests/completion-requests.js';
import type { PlateWorker } from '../recipes/evaluation/deferred-analyst.js';
import { languageOf, type Translations, Wording } from '../wording/wording.js';
import type { FolderReader } from './recipe-folder.js';
import { inPortions } from './portions.js';
import { serveInstruments } from './requests/instrument-requests.js';
import { serveHover } from './requests/hover-requests.js';
import { FINISHES_LINE, serveFormatting } from './requests/formatting-requests.js';
import { serveNavigation } from './requests/navigation-requests.js';
import { OpenText } from './open-text.js';
import { InstrumentsChanged } from './protocol.js';
import { Publisher } from './publisher.js';
import type { Serving } from './serving.js';
import { Session } from './session.js';
import { Turns } from './turns.js';
import { type Settings, settingsOf } from './client-settings.js';

/** The table of a language other than English. `options`: what the editor gave the server on its way. */
export type TranslationsFor = (language: string, options: unknown) => Promise<Translations>;

export function serve(
  connection: Connection,
  folder: FolderReader,
  worker?: PlateWorker,
  translations?: TranslationsFor,
  planFiles?: () => Promise<PlanFiles>,
): void {
  const documents = new TextDocuments<OpenText>(OpenText);
  const delivered = inPortions(
    () => {
      news();
      askAnew();
    },
    () => !session.isSolving,
  );
  const session: Session = new Session(folder, worker && { worker, delivered }, (words) =>
    connection.console.error(words),
  );
  const versionOf = (uri: string) => documents.get(uri)?.version ?? null;
  const closed: Serving['closed'] = (listener) => void documents.onDidClose(({ document }) => listener(document.uri));
  const turns = new Turns();
  const asked = () => {
    turns.note();
  };
  const ports = {
    connection,
    session,
    versionOf,
    ...answering(connection, () => session.wording, asked),
    closed,
  };
  const publisher: Publisher = new Publisher(session, {
    send: (publication) => void connection.sendDiagnostics(publication),
    versionOf,
    later: (work) => void setTimeout(work, 0),
    whenQuiet: (work) => {
      turns.whenQuiet(work);
    },
    done: () => void connection.sendNotification(InstrumentsChanged),
    log: (fault) => {
      connection.console.error(inFull(fault));
    },
  });
  let folders: readonly string[] = [];
  let settings: Settings | undefined;
  // Until it is known what is set, nothing is told: it might have to be withdrawn.
  let knowsSettings = false;
  const news = () => {
    if (knowsSettings) publisher.refresh();
  };
  let watches = false;
  let hasFolders = false;
  const shown = { lenses: true, hints: true };
  let refreshes = { hints: false, lenses: false, tokens: false };
  // What the solver found out stands in hints and lenses too, and without an edit the editor would not ask for those again.
  const askAnew = () => {
    if (refreshes.hints) connection.languages.inlayHint.refresh().catch(() => undefined);
    if (refreshes.lenses) connection.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined);
  };

  connection.onInitialize(async (params) => {
    const language = languageOf(params.locale);
    if (translations && language !== 'en') {
      session.speak(new Wording(await translations(language, params.initializationOptions), language));
    }
    folders = foldersOf(params);
    watches = params.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false;
    const { inlayHint, codeLens, semanticTokens } = params.capabilities.workspace ?? {};
    refreshes = {
      hints: inlayHint?.refreshSupport ?? false,
      lenses: codeLens?.refreshSupport ?? false,
      tokens: semanticTokens?.refreshSupport ?? false,
    };
    settings = settingsOf(connection, params.capabilities, (wishes) => {
      session.grade(wishes.grades);
      const isShownAnew = wishes.lenses !== shown.lenses || wishes.hints !== shown.hints;
      Object.assign(shown, { lenses: wishes.lenses, hints: wishes.hints });
      if (isShownAnew) askAnew();
      news();
    });
    answerRequests({ ...ports, client: params.capabilities, shown }, planFiles);
    hasFolders = params.capabilities.workspace?.workspaceFolders ?? false;
    return CAPABILITIES;
  });

  // Further folders may be opened beside the first, and closed again.
  const followFolders = () => {
    const changed = async ({ added, removed }: WorkspaceFoldersChangeEvent) => {
      session.leave(removed.map(({ uri }) => uri));
      if (added.length > 0) await session.load(added.map(({ uri }) => uri));
      news();
    };
    connection.workspace.onDidChangeWorkspaceFolders(guarded(connection, changed));
  };

  // An editor that will not watch files still gets everything else.
  const watch = guarded<undefined>(connection, async () => {
    const watchers = [{ globPattern: '**/*.bookmatch' }];
    await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
  });
  connection.onInitialized(
    guarded(connection, async () => {
      // Not before the editor knows what the server can do: it would not know yet what is asked of it here.
      if (hasFolders) followFolders();
      if (watches) await watch(undefined);
      const loaded = session.load(folders);
      // Whoever does not say what is set gets every finding as it is.
      await Promise.race([settings?.read(), new Promise((go) => void setTimeout(go, SETTINGS_TIMEOUT))]);
      knowsSettings = true;
      news();
      await loaded;
      news();
      askAnew();
      // A file shown before the folder was read has colours of names that were not known yet.
      if (refreshes.tokens) connection.languages.semanticTokens.refresh().catch(() => undefined);
    }),
  );

  const typed = ({ document }: TextDocumentChangeEvent<OpenText>) => {
    session.type(document.uri, document.getText());
    news();
  };
  documents.onDidChangeContent(guarded(connection, typed));
  documents.onDidClose(
    guarded(connection, async ({ document }: TextDocumentChangeEvent<OpenText>) => {
      await session.close(document.uri);
      news();
    }),
  );
  connection.onDidChangeWatchedFiles(
    guarded(connection, async ({ changes }: DidChangeWatchedFilesParams) => {
      await Promise.all(changes.map(({ uri }) => session.changedOnDisk(uri)));
      news();
    }),
  );

  connection.onShutdown(() => {
    publisher.stop();
  });

  documents.listen(connection);
  connection.listen();
}

/** How long the first findings wait to hear what is set, ms. */
const SETTINGS_TIMEOUT = 1000;

/** Only once the language is known: every group of handlers takes up the session's desk. */
function answerRequests(serving: Serving, planFiles: (() => Promise<PlanFiles>) | undefined): void {
  serveNavigation(serving);
  serveHover(serving);
  serveSemanticTokens(serving);
  serveFormatting(serving);
  serveCompletion(serving);
  serveCodeActions(serving);
  serveInstruments(serving);
  servePanels(serving);
  servePlans(serving, planFiles);
  serveReadings(serving);
  serveAnotherParent(serving);
  serveWays(serving);
  serveOneInstrument(serving);
}

const CAPABILITIES: InitializeResult = {
  serverInfo: { name: 'bookmatch' },
  capabilities: {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    hoverProvider: true,
    definitionProvider: true,
    implementationProvider: true,
    referencesProvider: true,
    renameProvider: { prepareProvider: true },
    documentHighlightProvider: true,
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    typeHierarchyProvider: true,
    documentLinkProvider: { resolveProvider: false },
    inlayHintProvider: { resolveProvider: false },
    codeLensProvider: { resolveProvider: false },
    semanticTokensProvider: { legend: LEGEND, full: { delta: true }, range: true },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: FINISHES_LINE,
    completionProvider: { triggerCharacters: ['.', ' ', ':', '>'], resolveProvider: false },
    codeActionProvider: {
      codeActionKinds: CODE_ACTION_KINDS,
      resolveProvider: false,
    },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
  },
};

function foldersOf(params: InitializeParams): readonly string[] {
  return params.workspaceFolders?.map((each) => each.uri) ?? [];
}
