/**
 * The requests of our own, beside those of the Language Server Protocol. The server answers them; the extension, which
 * knows the language by nothing else, sends them. Everything here is for people to read: numbers come written out,
 * with their unit, in the shop's way.
 */
import type { Range, WorkspaceEdit } from 'vscode-languageserver-protocol';
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

/** A page of the library (the species, a finding) as read-only text; `null` when there is none. `uri` is of the scheme `LIBRARY_SCHEME`. */
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

// ---- beside the text ------------------------------------------------------------------------------------------------

/** A model, recipe or build in the family tree of the open folders. */
export interface LineageEntry {
  readonly kind: 'model' | 'recipe' | 'build';
  readonly name: string;
  readonly uri: string;
  /** The name itself, where a click leads. */
  readonly range: Range;
  /** What stands after `for`, `from` or `of`, whether or not it is there. */
  readonly parent?: string;
  /** For a recipe with a parent: what it changes, and how much may be changed. */
  readonly count?: { readonly changes: number; readonly limit: number; readonly substitution: boolean };
  readonly children: readonly LineageEntry[];
}

export const ListLineage = new RequestType0<readonly LineageEntry[], void>('bookmatch/lineage');

/** The measured sets for the top of one recipe, each with what it would need and weigh, the best first. */
export interface WoodChoice {
  readonly recipe: string;
  /** Path of what is kept, its value, and whose it is. */
  readonly quantity: string;
  readonly target: string;
  readonly from: string;
  readonly sets: readonly RankedSet[];
}

export interface RankedSet {
  readonly wood: string;
  readonly species?: string;
  /** The recipe has it now. */
  readonly current: boolean;
  /** Builds it has gone into. */
  readonly builtInto: readonly string[];
  readonly thickness?: string;
  readonly mass?: string;
  /** Against the lightest that can still be made. */
  readonly heavier?: string;
  readonly across?: string;
  /** Against the top it is compared with; absent where that is the same. */
  readonly acrossChange?: string;
  /** Left of the blank once planed. */
  readonly leaves?: string;
  readonly trouble?: 'too-thin-blank' | 'not-usual' | 'out-of-reach' | 'unknown';
}

/** `null` when there is no such recipe, or the stiffness it should keep is not known. */
export const GetWoodChoice = new RequestType<{ readonly recipe: string }, WoodChoice | null, void>(
  'bookmatch/woodChoice',
);

/** What to write to take a set into a recipe. `thicknessLeft`: the recipe sets its thickness by itself. */
export interface WoodUse {
  readonly edit: WorkspaceEdit;
  readonly thicknessLeft: boolean;
}

/** `null` when the recipe or the set is not there. */
export const GetWoodUse = new RequestType<{ readonly recipe: string; readonly wood: string }, WoodUse | null, void>(
  'bookmatch/woodUse',
);

/** Station from the tail, and offset from the centre line, bass side negative; mm. */
export type PlanPoint = readonly [number, number];

/** The plan of an instrument, seen from the front, in mm. What is not known is left out and named in `missing`. */
export interface Drawing {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  /** Closed, the first point not repeated. */
  readonly outline: readonly PlanPoint[];
  readonly parts: readonly DrawnPart[];
  readonly missing: readonly { readonly part: string; readonly paths: readonly string[]; readonly trouble?: string }[];
}

export interface DrawnPart {
  /** `bracing.x-bass`, `bridge`, `soundhole`, `top`. */
  readonly path: string;
  readonly kind: 'plate' | 'soundhole' | 'brace' | 'bridge' | 'bridge-plate';
  /** Which plate it is on. */
  readonly plate: 'top' | 'back';
  /** Closed; absent for a plate, which has the outline. */
  readonly shape?: readonly PlanPoint[];
  /** Of a brace: height along its length, both mm. */
  readonly heights?: readonly { readonly at: number; readonly height: number }[];
  /** Its numbers, written out: `width` `7.9 mm`. */
  readonly figures: readonly { readonly path: string; readonly value: string }[];
  /** Where it is written: in the recipe itself if that says anything of it. */
  readonly source?: { readonly uri: string; readonly range: Range };
}

/** `null` when there is no model, recipe or build of that name. */
export const GetDrawing = new RequestType<{ readonly name: string }, Drawing | null, void>('bookmatch/drawing');
