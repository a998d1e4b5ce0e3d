/** From the language's own plain data to the protocol's, and nothing else. */
import {
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type Location as ProtocolLocation,
  type SnippetTextEdit,
  SymbolKind,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-types';
import type { Edit, Finding, Place, Severity } from '../checks/finding.js';
import { type Desk, type Location, shifted } from '../checks/desk.js';
import type { Symbol } from '../editing/navigation/symbols.js';
import { pageUri } from './library-pages.js';
import { withReasonToType } from './requests/reason-snippet.js';

/** Where a place stands now; undefined once its definition has left the shelf. */
export function toLocation(desk: Desk, place: Place): Location | undefined {
  if ('uri' in place) return { uri: place.uri, range: place.span };
  const now = desk.shelf.placement(place.definition);
  return now && { uri: now.uri, range: shifted(place.span, now.line) };
}

const SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

export function toDiagnostic(desk: Desk, finding: Finding): Diagnostic | undefined {
  const location = toLocation(desk, finding.place);
  if (!location) return undefined;
  const related = finding.related.flatMap(({ place, message }) => {
    const where = toLocation(desk, place);
    return where ? [{ location: where, message }] : [];
  });
  return {
    range: location.range,
    severity: SEVERITY[finding.severity],
    code: finding.code,
    codeDescription: { href: pageUri(finding.code) },
    source: 'bookmatch',
    message: finding.message,
    ...(related.length > 0 ? { relatedInformation: related } : {}),
    ...(finding.tag === 'unnecessary' ? { tags: [DiagnosticTag.Unnecessary] } : {}),
  };
}

/** Findings as an editor shows them; those whose definition has left the shelf are left out. */
export function diagnosticsOf(desk: Desk, findings: readonly Finding[]): readonly Diagnostic[] {
  return findings.map((finding) => toDiagnostic(desk, finding)).filter((diagnostic) => diagnostic !== undefined);
}

/** Whether two pieces of plain data, made by the same code, say the same. */
export function isSameData(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [one, other] = [Object.entries(a), Object.entries(b)];
  return (
    one.length === other.length &&
    one.every(([key, value], i) => other[i]?.[0] === key && isSameData(value, other[i][1]))
  );
}

/**
 * Edits with the version of the text they were made for, so that an editor can refuse them when it has moved on.
 * `lineOf`, for an editor that takes snippets: the line an edit begins on; edits that ask for a reason then become snippets.
 */
export function toWorkspaceEdit(
  edits: readonly (Location & { readonly text: string })[],
  versionOf: (uri: string) => number | null,
  lineOf: (uri: string, line: number) => string | undefined = () => undefined,
): WorkspaceEdit {
  const byFile = new Map<string, (TextEdit | SnippetTextEdit)[]>();
  for (const { uri, range, text } of edits) {
    const line = lineOf(uri, range.start.line);
    const plain: TextEdit = { range, newText: text };
    const edit = line === undefined ? plain : withReasonToType(plain, line);
    const list = byFile.get(uri);
    if (list) list.push(edit);
    else byFile.set(uri, [edit]);
  }
  const documentChanges = [...byFile].map(([uri, list]) => ({
    textDocument: { uri, version: versionOf(uri) },
    edits: list,
  }));
  return { documentChanges };
}

/** The edits of a fix at the places where they stand now. */
export function placed(desk: Desk, edits: readonly Edit[]): readonly (Location & { readonly text: string })[] {
  return edits.flatMap(({ place, text }) => {
    const location = toLocation(desk, place);
    return location ? [{ ...location, text }] : [];
  });
}

const SYMBOL_KINDS: Readonly<Record<Symbol['kind'], SymbolKind>> = {
  shop: SymbolKind.Namespace,
  species: SymbolKind.Constant,
  wood: SymbolKind.Constant,
  model: SymbolKind.Class,
  recipe: SymbolKind.Class,
  build: SymbolKind.Object,
  rig: SymbolKind.Struct,
  strings: SymbolKind.Array,
  appointments: SymbolKind.Package,
  order: SymbolKind.Event,
  part: SymbolKind.Module,
  property: SymbolKind.Property,
  statement: SymbolKind.Object,
};

export function symbolKind(kind: Symbol['kind']): SymbolKind {
  return SYMBOL_KINDS[kind];
}

export function toProtocolLocation({ uri, range }: Location): ProtocolLocation {
  return { uri, range };
}
