/** The shape of the parts catalogue: one typed table that completion, hover, validation and the manual all read. */
import type { Dimension } from '../quantities/dimension.js';
import type { DefinitionKind } from '../recipes/facts.js';

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
  | 'part';

/** Low, typical and high in SI. Outside low..high is worth a question, never an error. */
export interface PlausibleRange {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  /** When the range fits only some instruments: `steel`, `classical`, `parlor`, … Absent: any. */
  readonly of?: string;
  readonly note?: string;
  /** Where the range comes from: a citation, `common practice`, or `from memory`. */
  readonly source: string;
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
  readonly choices?: readonly string[];
  readonly ranges: readonly PlausibleRange[];
  readonly class: VariableClass;
  /** After `costly` a change means re-work; after `impossible`, scrapping a part. */
  readonly freeze?: { readonly costly?: Stage; readonly impossible?: Stage };
  /** Other words makers use for the last word of the path. */
  readonly synonyms: readonly string[];
  /** One plain sentence. */
  readonly sentence: string;
}

/** A named part: the inner words of paths (`top`, `bracing`, `bracing.*`, `bridge.plate`). */
export interface Part {
  readonly path: string;
  readonly synonyms: readonly string[];
  readonly sentence: string;
}
