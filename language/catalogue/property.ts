/** The shape of the parts catalogue: one typed table that completion, hover, validation and the manual all read. */
import type { Dimension } from '../quantities/dimension.js';
import type { DefinitionKind } from '../facts/facts.js';

/** The trade's stages in order; the index is the stage number. (common practice) */
export const STAGES = [
  'commission',
  'wood',
  'joining',
  'rosette',
  'thicknessing',
  'outline',
  'bracing',
  'rim',
  'closing',
  'binding',
  'neck',
  'neck-angle',
  'finish',
  'setup',
  'first-tests',
  'settling',
  'delivery',
  'returns',
] as const;
export type Stage = (typeof STAGES)[number];

/**
 * - `voicing`, `body`: counted as independent variables
 * - `setup`, `option`, `appointment`: not counted, unless their computed effect matters
 * - `record`: describes a definition that is not an instrument (a wood set, a rig, the shop, a species)
 */
export type VariableClass = 'voicing' | 'body' | 'setup' | 'option' | 'appointment' | 'record';

/** What a property accepts. `wood`, `species`, `strings`, `rig`: the name of such a definition. `choice`: one of `choices`. */
export type ValueKind =
  | 'quantity'
  | 'count'
  | 'ratio'
  | 'size'
  | 'point'
  | 'text'
  | 'choice'
  | 'date'
  | 'list'
  | 'wood'
  | 'species'
  | 'strings'
  | 'rig'
  | 'model'
  | 'part';

/** Low, typical and high in SI. Outside low..high is worth a question, never an error. */
export interface PlausibleRange {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  /** When the range fits only some: tags parted by spaces, all of which must hold (`om sitka-spruce`). Absent: any. */
  readonly of?: string;
  readonly note?: string;
  /** Where the range comes from: a citation, `common practice`, or `from memory`. */
  readonly source: string;
}

/** Until when a change is free, when it means re-work, and when it can no longer be made. */
export interface Freeze {
  /** A change after this stage means re-work. */
  readonly costly?: Stage;
  /** A change after this stage means scrapping or re-making a part. */
  readonly impossible?: Stage;
  /** The one way that stays open longer: plates and braces only get thinner, a soundhole only larger. */
  readonly easier?: { readonly way: 'smaller' | 'larger'; readonly costly?: Stage; readonly impossible?: Stage };
}

export interface Property {
  /** Dotted path; `*` stands for one member name the maker chooses (`bracing.*.height`). */
  readonly path: string;
  /** The kinds of definition it may be written in. */
  readonly where: readonly DefinitionKind[];
  readonly kind: ValueKind;
  /** For `quantity`, `size`, `point` (each part) and `list` of quantities. */
  readonly dimension?: Dimension;
  /** Symbol of the unit offered first. */
  readonly unit?: string;
  /** For `choice`: every value. */
  readonly choices?: readonly string[];
  /** Words accepted in place of the value (`flat` for a radius, `middle` for the place of a load). */
  readonly words?: readonly string[];
  readonly ranges: readonly PlausibleRange[];
  readonly class: VariableClass;
  readonly freeze?: Freeze;
  /** Other words makers use for the last word of the path. */
  readonly synonyms: readonly string[];
  /** One plain sentence. */
  readonly sentence: string;
}

/** A named part: the inner words of paths (`top`, `bracing`, `bracing.*`, `bridge.plate`). */
export interface Part {
  readonly path: string;
  /** Usual names in place of a closing `*`, most usual first. */
  readonly members?: readonly string[];
  readonly synonyms: readonly string[];
  readonly sentence: string;
}
