/**
 * The requests of our own, beside those of the Language Server Protocol. The server answers them; the extension, which
 * knows the language by nothing else, sends them. Everything here is for people to read: numbers come written out,
 * with their unit, in the shop's way.
 */
import type { Range } from 'vscode-languageserver-protocol';
import { NotificationType0, RequestType, RequestType0 } from 'vscode-languageserver-protocol';

/** Whatever can be resolved and laid beside another: something with a value for every path of its line. */
export interface InstrumentEntry {
  readonly name: string;
  readonly kind: 'model' | 'recipe' | 'build';
  /** The name after `from`, `for` or `of`; absent when there is none. */
  readonly parent?: string;
  readonly uri: string;
  /** The whole definition, for finding the one at the cursor. */
  readonly range: Range;
}

/** Every model, recipe and build of the open folders, each after its parent, otherwise in the order of the files. */
export const ListInstruments = new RequestType0<readonly InstrumentEntry[], void>('bookmatch/listInstruments');

export interface ResolvedText {
  /** For the tab: `tarn-7, resolved`. */
  readonly title: string;
  /** The instrument written out in full in the language itself, with computed values at the end of each block. */
  readonly text: string;
}

/** An instrument written out in full; `null` when there is none of that name. */
export const GetResolvedText = new RequestType<{ readonly name: string }, ResolvedText | null, void>(
  'bookmatch/resolvedText',
);

/** Two instruments side by side. */
export interface ComparisonTable {
  readonly a: string;
  readonly b: string;
  /** The nearest recipe both descend from. */
  readonly ancestor?: string;
  readonly changes: readonly {
    /** The path, or the reason of a `together` group. */
    readonly label: string;
    readonly paths: readonly { readonly path: string; readonly a?: string; readonly b?: string }[];
  }[];
  readonly derived: readonly {
    readonly path: string;
    readonly a?: string;
    readonly b?: string;
    readonly difference?: string;
    readonly percent?: string;
    /** Paths that would have to be known for a value that is absent. */
    readonly missing: readonly string[];
    /** How much each change is answerable for, by its label. */
    readonly contributions: readonly { readonly label: string; readonly amount: string }[];
  }[];
}

/** `null` when either name is unknown. */
export const GetComparison = new RequestType<{ readonly a: string; readonly b: string }, ComparisonTable | null, void>(
  'bookmatch/comparison',
);

/** The species library as read-only text; `null` when there is no such file. `uri` is of the scheme `LIBRARY_SCHEME`. */
export const GetLibraryText = new RequestType<{ readonly uri: string }, { readonly text: string } | null, void>(
  'bookmatch/libraryText',
);

/** Definitions in the library stand in documents of this scheme, such as `bookmatch-library:/species.bookmatch`. */
export const LIBRARY_SCHEME = 'bookmatch-library';

/** Sent by the server after an edit has been worked in: texts and tables asked for before may be out of date. */
export const InstrumentsChanged = new NotificationType0('bookmatch/instrumentsChanged');

/** Commands the server may put behind a lens or a fix; the extension carries them out. */
export const COMMANDS = {
  /** Arguments: name of the one, name of the other. Asks for what is not given. */
  compareRecipes: 'bookmatch.compareRecipes',
  /** Argument: name. Without it, the instrument at the cursor. */
  compareWithParent: 'bookmatch.compareWithParent',
  /** Argument: name. Without it, the instrument at the cursor. */
  showResolved: 'bookmatch.showResolved',
} as const;
