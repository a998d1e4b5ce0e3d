/** One word of the language, as the list of words tells it. */
import { english } from '../../wording/wording.js';

export type Section =
  'definition' | 'line' | 'part' | 'property' | 'computed' | 'unit' | 'choice' | 'stage' | 'finding' | 'species';

/** In the order in which they are best read. */
export const SECTIONS: Readonly<Record<Section, string>> = {
  definition: english('Definitions'),
  line: english('Words that begin or join a line'),
  part: english('Parts'),
  property: english('Properties'),
  computed: english('What is computed'),
  choice: english('Choices'),
  unit: english('Units'),
  stage: english('Stages of work'),
  species: english('Species of wood'),
  finding: english('Findings'),
};

export interface Entry {
  readonly section: Section;
  /** The word, or the whole path. */
  readonly word: string;
  readonly sentence: string;
  /** What it takes: a unit, a kind of value, the kind of definition. Short, for a column. */
  readonly takes: string;
  /** Further sentences: choices, plausible range with source, when it is fixed. */
  readonly more: readonly string[];
  /** Other words it is found by. */
  readonly also: readonly string[];
  /** An example, as recipe text. */
  readonly example?: string;
}
