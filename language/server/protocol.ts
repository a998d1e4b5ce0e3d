/**
 * The requests of our own, beside those of the Language Server Protocol. The server answers them; the extension, which
 * knows the language by nothing else, sends them. Everything here is for people to read: numbers come written out,
 * with their unit, in the shop's way.
 */
import type { Range, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { NotificationType0, RequestType, RequestType0 } from 'vscode-languageserver-protocol';
import type { ComparisonTable } from '../reports/comparison/comparison-table.js';
import type { ChangeCount } from '../reports/change-count.js';
import type { ComparedModes } from '../reports/comparison/compared-modes.js';
import type { Drawing } from '../reports/plan/drawing.js';
import type { ModelEffectsTable } from '../reports/effects/model-effects-table.js';
import type { ModeShapes } from '../reports/plan/mode-shapes.js';
import type { PlanFileAsked } from '../reports/plan/plan-file.js';
import type { Readable, ReadingTaken } from '../editing/record-reading.js';
import type { PlanPicture } from '../reports/plan/plan-picture.js';
import type { RecipeTests } from '../reports/expectation-results.js';
import type { PossibleParent } from '../editing/refactoring/rebase.js';
import type { ResolvedText } from '../reports/resolved-text.js';
import type { StarterAnswers, StarterFile } from '../editing/starter/starter-shop.js';
import type { ValuesList } from '../reports/values-list.js';
import type { WoodChoice } from '../reports/wood-choice.js';
import type { PrintedKind } from '../sheets/sheet.js';

// Answers that are plain data already go over the wire as they are.
export type {
  ChangedPath,
  ChangeRow,
  ComparedEvidence,
  ComparedFingerboard,
  ComparedNote,
  ComparedString,
  ComparisonTable,
  DerivedRow,
  EvidenceRow,
  ReadingRow,
} from '../reports/comparison/comparison-table.js';
export type { ComparedModes, ModePair } from '../reports/comparison/compared-modes.js';
export type { Drawing, DrawnPart, PlanPoint } from '../reports/plan/drawing.js';
export type {
  EffectRow,
  ModelEffectsTable,
  ResponseTable,
  VariableRow,
} from '../reports/effects/model-effects-table.js';
export type { DrawnMode, ModeShapes } from '../reports/plan/mode-shapes.js';
export type { MovingArea } from '../reports/plan/moving-areas.js';
export type { ExpectationTest, RecipeTests } from '../reports/expectation-results.js';
export type { ChangeCount } from '../reports/change-count.js';
export type { ListedValue, PartOfValues, ValuesList } from '../reports/values-list.js';
export type { PossibleParent } from '../editing/refactoring/rebase.js';
export type { ResolvedText } from '../reports/resolved-text.js';
export type { StarterAnswers, StarterFile } from '../editing/starter/starter-shop.js';
export type { RankedSet, WoodChoice } from '../reports/wood-choice.js';

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

/** An instrument written out in full; `null` when there is none of that name. */
export const GetResolvedText = new RequestType<{ readonly name: string }, ResolvedText | null, void>(
  'bookmatch/resolvedText',
);

/** Two instruments side by side; `null` when either name is unknown. */
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

/** What the recipes of the open folders expect of themselves, and how each of it stands. */
export const ListExpectations = new RequestType0<readonly RecipeTests[], void>('bookmatch/expectations');

/** The files of a shop to start from. Nothing is written: that is for the editor to do. */
export const GetStarterShop = new RequestType<StarterAnswers, readonly StarterFile[], void>('bookmatch/starterShop');

// ---- asked by the server --------------------------------------------------------------------------------------------

/** The recipe files in folders, given and answered as URIs; asked for folders the server cannot read by itself. */
export const ListFiles = new RequestType<{ readonly folders: readonly string[] }, readonly string[], void>(
  'bookmatch/listFiles',
);

export interface FileAsked {
  readonly uri: string;
  /** Bytes; of a file larger than this only that is told. */
  readonly atMost: number;
}

/** The text of a file, or why it has none; `null` when it is gone. */
export const ReadFile = new RequestType<
  FileAsked,
  { readonly text: string } | { readonly unread: 'too-large' | 'unreadable' } | null,
  void
>('bookmatch/readFile');

/** Options for a server that is a worker in a browser, which cannot find out where it comes from. */
export interface InBrowserOptions {
  /** Address of the folder its program lies in. */
  readonly program: string;
}

/** Where the server, itself a worker in a browser, finds the script of the plate solver. */
export const GetSolverAddress = new RequestType0<string, void>('bookmatch/solverAddress');

// ---- commands -------------------------------------------------------------------------------------------------------

/** Commands the server may put behind a lens or a fix; the extension carries them out. */
export const COMMANDS = {
  /** Arguments: name of the one, name of the other. Asks for what is not given. */
  compareRecipes: 'bookmatch.compareRecipes',
  /** Argument: name. Without it, the instrument at the cursor. */
  compareWithParent: 'bookmatch.compareWithParent',
  /** Arguments: name of the one, name of the other. Asks for what is not given. */
  showSideBySide: 'bookmatch.showSideBySide',
  /** Argument: name of a recipe. Without it, the one at the cursor. Asks which parent. */
  setOnAnotherParent: 'bookmatch.setOnAnotherParent',
  showWays: 'bookmatch.showWays',
  /** Argument: name. Without it, the instrument at the cursor. */
  showResolved: 'bookmatch.showResolved',
  /** No argument. Asks a few questions, and writes a shop to start from into the open folder. */
  startShop: 'bookmatch.startShop',
  /** No argument. Opens the walkthrough. */
  firstSteps: 'bookmatch.firstSteps',
  /** Argument: name. Without it, the instrument at the cursor. Asks what to draw, and how. */
  savePlan: 'bookmatch.savePlan',
  /** Argument: name of a build. Without it, the one at the cursor. Asks stage, what and how much. */
  recordReading: 'bookmatch.recordReading',
  /** Argument: name of a recipe, a build or an order. Without it, the one at the cursor. Asks which sheet. */
  printSheet: 'bookmatch.printSheet',
  /** Argument: name of a model or of what is built on it. Without it, the instrument at the cursor. */
  showEffects: 'bookmatch.showEffects',
  /** Argument: name. Without it, the instrument at the cursor. */
  showDrawing: 'bookmatch.showDrawing',
  /** No argument. Ends the server if it runs, and starts it anew. */
  restart: 'bookmatch.restart',
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

/** What can be read of a build, stage by stage; `null` when there is no such build. */
export const ListReadable = new RequestType<{ readonly build: string }, readonly Readable[] | null, void>(
  'bookmatch/readable',
);

export type RecordedReading = { readonly edit: WorkspaceEdit } | { readonly reason: string };

/** The line to write for a reading, or why not; `null` when there is no such build. */
export const GetRecordedReading = new RequestType<ReadingTaken, RecordedReading | null, void>(
  'bookmatch/recordedReading',
);
export type { Readable, ReadingTaken } from '../editing/record-reading.js';

/** The recipes one could be set on, with the same differences; `null` for what is no recipe with a parent. */
export const ListParents = new RequestType<{ readonly recipe: string }, readonly PossibleParent[] | null, void>(
  'bookmatch/parents',
);

export type Rebased = { readonly edit: WorkspaceEdit } | { readonly reason: string };

/** What to write to set a recipe on another parent, or why it cannot be; `null` when either is not there. */
export const GetRebase = new RequestType<{ readonly recipe: string; readonly parent: string }, Rebased | null, void>(
  'bookmatch/rebase',
);

/** A single change that meets a wish: what it takes and does, and what to write. */
export interface WayFound {
  readonly change: string;
  readonly result: string;
  readonly also: string;
  readonly until: string;
  readonly edit: WorkspaceEdit;
}

export interface WaysFound {
  readonly state: 'found' | 'met' | 'waiting' | 'unreadable';
  readonly ways: readonly WayFound[];
}

/** Every single change that meets a wish, as `resonance.top: 170 Hz`; `null` when there is no such recipe. While its state is `waiting`, ask again. */
export const GetWays = new RequestType<{ readonly recipe: string; readonly wish: string }, WaysFound | null, void>(
  'bookmatch/ways',
);

/** `null` when there is no model, recipe or build of that name. */
export const GetDrawing = new RequestType<{ readonly name: string }, Drawing | null, void>('bookmatch/drawing');

/** The whole plan of an instrument, in marks a page draws; `null` when there is no instrument of that name. */
export const GetPlan = new RequestType<{ readonly name: string }, PlanPicture | null, void>('bookmatch/plan');

/** What can be saved of a plan: the whole, or the template of a part. */
export interface PlanPart {
  readonly key: string;
  readonly title: string;
}
export const ListPlanParts = new RequestType0<readonly PlanPart[], void>('bookmatch/planParts');

/** A file to save, or one sentence on why there is none. */
export type SavedPlan = { readonly fileName: string; readonly base64: string } | { readonly trouble: string };
export const GetPlanFile = new RequestType<PlanFileAsked, SavedPlan, void>('bookmatch/planFile');
export type { PlanFileAsked } from '../reports/plan/plan-file.js';
export type { PlanLabel, PlanMark, PlanPicture } from '../reports/plan/plan-picture.js';

/** The first modes of a plate; `null` when there is no instrument of that name. While its state is `waiting`, ask again at the next news. */
export const GetModeShapes = new RequestType<
  { readonly name: string; readonly plate: 'top' | 'back' },
  ModeShapes | null,
  void
>('bookmatch/modeShapes');

/** The first modes of a plate of two instruments, each with the one it is most like in the other; `null` when either name is unknown. */
export const GetComparedModes = new RequestType<
  { readonly a: string; readonly b: string; readonly plate: 'top' | 'back' },
  ComparedModes | null,
  void
>('bookmatch/comparedModes');

/** Every value of an instrument, part by part; `null` when there is none of that name. */
export const GetValues = new RequestType<{ readonly name: string }, ValuesList | null, void>('bookmatch/values');

/** What the builds of a model say all together; `null` when there is no such model. While something is being worked out, ask again at the next news. */
export const GetModelEffects = new RequestType<{ readonly model: string }, ModelEffectsTable | null, void>(
  'bookmatch/modelEffects',
);

/** How many changes a recipe makes; `null` for what is no recipe or has no parent. */
export const GetChangeCount = new RequestType<{ readonly recipe: string }, ChangeCount | null, void>(
  'bookmatch/changeCount',
);

/** A recipe, a build, or an order for one: whatever a sheet can be made of. */
export interface PrintableEntry {
  readonly name: string;
  readonly kind: 'recipe' | 'build' | 'order';
  readonly parent?: string;
  readonly uri: string;
  /** The whole definition, for finding the one at the cursor. */
  readonly range: Range;
}

export const ListPrintables = new RequestType0<readonly PrintableEntry[], void>('bookmatch/printables');

/** A sheet to print: a document that needs nothing but itself, every text escaped. */
export interface PrintedSheet {
  readonly title: string;
  readonly html: string;
}

/** `null` when there is no recipe, build or order of that name. */
export const GetSheet = new RequestType<
  { readonly name: string; readonly kind: PrintedKind },
  PrintedSheet | null,
  void
>('bookmatch/sheet');
export type { PrintedKind } from '../sheets/sheet.js';

/**
 * What a maker wrote, for a lens, the status bar or a line to choose: VS Code draws an icon where `$(name)` stands there, and
 * takes the backslash before it as a sign that it is meant as it stands.
 */
export function inLabel(text: string): string {
  return text.replace(/\$\(/g, '\\$(');
}

/** The same for a message, where VS Code makes `[words](command:…)` into something to click. */
export function inMessage(text: string): string {
  return text.replace(/\]\(/g, '] (');
}
