/** Code actions: fixes of findings, accepting a finding where it stands, and refactorings. */
import type { CodeActionParams } from 'vscode-languageserver';
import { type CodeAction, CodeActionKind, type Diagnostic, type Range } from 'vscode-languageserver-types';
import { acceptInPlace } from '../../checks/acceptance.js';
import type { Fix } from '../../checks/finding.js';
import { type Offer, type RefactoringKind, refactoringsAt } from '../../editing/refactoring/refactorings.js';
import { placed, toDiagnostic, toLocation, toWorkspaceEdit } from '../convert.js';
import type { Serving } from '../serving.js';

const KINDS: Readonly<Record<RefactoringKind, CodeActionKind>> = {
  extract: CodeActionKind.RefactorExtract,
  inline: CodeActionKind.RefactorInline,
  rewrite: CodeActionKind.RefactorRewrite,
  move: CodeActionKind.RefactorMove,
  change: CodeActionKind.RefactorRewrite,
};

export const CODE_ACTION_KINDS: CodeActionKind[] = [CodeActionKind.QuickFix, ...new Set(Object.values(KINDS))];

export function serveCodeActions({ connection, session, versionOf, answer, client }: Serving): void {
  const { desk, parser } = session;
  const snippets = client.workspace?.workspaceEdit?.snippetEditSupport === true;
  const disabled = client.textDocument?.codeAction?.disabledSupport === true;

  connection.onCodeAction(
    answer<CodeActionParams, CodeAction[]>([], ({ textDocument: { uri }, range, context: { only } }) => {
      const isWanted = (kind: CodeActionKind) => !only || only.some((asked) => isWithin(kind, asked));
      const actions = isWanted(CodeActionKind.QuickFix) ? fixes(uri, range) : [];
      if (!Object.values(KINDS).some(isWanted)) return actions;
      // What cannot be done is of interest to whoever asks for refactorings, and to nobody else.
      const why = disabled && only?.some((kind) => isWithin(kind, CodeActionKind.Refactor)) === true;
      // What mends a finding and what rewrites may be one and the same, such as splitting a recipe.
      const titles = new Set(actions.map(({ title }) => title));
      const offers = refactoringsAt(desk, parser, uri, range).filter(
        ({ kind, title }) => isWanted(KINDS[kind]) && !titles.has(title),
      );
      return [...actions, ...offers.flatMap((offer) => refactoring(offer, why))];
    }),
  );

  function fixes(uri: string, range: Range): CodeAction[] {
    const accepted = new Set<string>();
    return session.findings(uri).flatMap((finding) => {
      const location = toLocation(desk, finding.place);
      if (!location || !overlaps(location.range, range)) return [];
      const diagnostic = toDiagnostic(desk, finding);
      const accept = accepted.has(finding.code) ? undefined : acceptInPlace(finding, desk.workshop.wording);
      accepted.add(finding.code);
      return [...finding.fixes, ...(accept ? [accept] : [])].map((fix) => toFix(fix, diagnostic ? [diagnostic] : []));
    });
  }

  function toFix(fix: Fix, diagnostics: Diagnostic[]): CodeAction {
    return {
      title: fix.title,
      kind: CodeActionKind.QuickFix,
      diagnostics,
      edit: toWorkspaceEdit(placed(desk, fix.edits), versionOf, snippetsIn),
      ...(fix.preferred ? { isPreferred: true } : {}),
    };
  }

  function refactoring(offer: Offer, why: boolean): CodeAction[] {
    const { title } = offer;
    const kind = KINDS[offer.kind];
    if ('reason' in offer) return why ? [{ title, kind, disabled: { reason: offer.reason } }] : [];
    return [{ title, kind, edit: toWorkspaceEdit(placed(desk, offer.edits), versionOf, snippetsIn) }];
  }

  /** The line a place stands on, for an editor that lets a reason be typed where it is missing. */
  function snippetsIn(uri: string, line: number): string | undefined {
    return snippets ? desk.text(uri)?.split(/\r\n|\n|\r/)[line] : undefined;
  }
}

/** `refactor` holds `refactor.inline` and itself; the empty kind holds all. */
function isWithin(kind: CodeActionKind, asked: CodeActionKind): boolean {
  return asked === '' || kind === asked || kind.startsWith(`${asked}.`);
}

function overlaps(a: Range, b: Range): boolean {
  const before = (x: Range, y: Range) =>
    x.end.line < y.start.line || (x.end.line === y.start.line && x.end.character < y.start.character);
  return !before(a, b) && !before(b, a);
}
