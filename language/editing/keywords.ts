/** The words of the language itself: where each stands, one plain sentence, an example. */
import type { Statement } from '../facts/facts.js';

export interface Keyword {
  readonly word: string;
  /** Kinds of statement it belongs to; `head` for the head of a definition. */
  readonly around: readonly (Statement['kind'] | 'head')[];
  readonly sentence: string;
  readonly example: string;
}

export const KEYWORDS: readonly Keyword[] = [
  head(
    'shop',
    'What holds for everything made here: climate, tolerances, how many things an instrument may vary.',
    'shop marram-lane { climate { humidity: 45 %RH  temperature: 20 °C }  vary at most 1 }',
  ),
  head(
    'species',
    'What is known of a kind of wood. The built-in library has most; a shop may write its own.',
    'species apple { specific-gravity: 0.61 }',
  ),
  head(
    'wood',
    'A set of wood on the shelf, with what was measured on it.',
    'wood sitka-118 is sitka-spruce { density: 421 kg/m³ }',
  ),
  head('model', 'The shape and lay-out that a line of recipes starts from.', 'model tarn { scale: 645 mm }'),
  head(
    'recipe',
    'One instrument as meant: the first of a model in full, every other as what it changes in its parent.',
    'recipe tarn-7 from tarn-6 { change top.thickness: 2.85 mm -> 2.7 mm }',
  ),
  head(
    'build',
    'One instrument as made: what was measured on it, and how it turned out.',
    'build no-31 of tarn-7 { top.thickness: 2.66 mm }',
  ),
  head(
    'rig',
    'The device a plate is bent in; a deflection means nothing without it.',
    'rig long-span { span: 500 mm  load: 2.268 kg  at: middle  width: 400 mm }',
  ),
  head(
    'strings',
    'A set of strings.',
    'strings light-12 { gauges: .012 in, .016 in, .024 in, .032 in, .042 in, .053 in }',
  ),
  head(
    'appointments',
    'A package of what the player sees or plugs in; a recipe takes it by `with`.',
    'appointments ember { rosette: "red stone band" }',
  ),
  head(
    'order',
    'What was agreed with a client, by code, never by name.',
    'order c-07 of tarn-9 { agreed: 2026-02-03 }',
  ),
  head('is', 'Says which species a set of wood is.', 'wood sitka-118 is sitka-spruce { use: top }'),
  head('for', 'Names the model a first recipe is for.', 'recipe tarn-1 for tarn { top.thickness: 2.85 mm }'),
  head(
    'from',
    'Names the parent. Everything is as the parent has it, but for what this recipe changes.',
    'recipe tarn-7 from tarn-6 { change top.thickness: 2.85 mm -> 2.7 mm }',
  ),
  head('of', 'Names the recipe that was built or ordered.', 'build no-31 of tarn-7 { top.mass: 172 g }'),
  inside(
    'change',
    'Says what differs from the parent, from what to what. The old value is checked: if the parent no longer has it, you are told.',
    'change top.thickness: 2.85 mm -> 2.7 mm',
  ),
  {
    word: 'by',
    around: ['change'],
    sentence: 'A step from what the parent has, as a length or in per cent.',
    example: 'change top.thickness: by -0.15 mm',
  },
  inside('add', 'Adds a part that the parent does not have.', 'add bracing.finger-3 { width: 6 mm  height: 7 mm }'),
  inside('drop', 'Leaves out a part that the parent has.', 'drop bracing.finger-3'),
  inside(
    'together',
    'One tweak made in several places: it counts once, and says why.',
    'together "lighter X" {\n  change bracing.x-bass.height: 15 mm -> 14 mm\n  change bracing.x-treble.height: 15 mm -> 14 mm\n}',
  ),
  inside(
    'hold',
    'Keeps a computed quantity as the parent has it, by solving for one value. What is solved is not counted as a change.',
    'hold top.stiffness.along by top.thickness',
  ),
  {
    word: 'by',
    around: ['hold'],
    sentence: 'The value that is solved for, within what can be built. Several with commas go together, in proportion.',
    example: 'hold resonance.top by bracing.x-bass.height, bracing.x-treble.height',
  },
  {
    word: 'at',
    around: ['hold'],
    sentence: 'Holds to this value instead of the parent’s.',
    example: 'hold top.stiffness.along at 19.5 N·m by top.thickness',
  },
  inside(
    'expect',
    'A test of the recipe: met, missed with the number, or not to be computed with what is missing.',
    'expect top.mass: below 190 g',
  ),
  {
    word: 'below',
    around: ['expect', 'property'],
    sentence: 'At most this much.',
    example: 'expect top.mass: below 190 g',
  },
  {
    word: 'above',
    around: ['expect', 'property'],
    sentence: 'At least this much.',
    example: 'expect bridge.break-angle: above 18 deg',
  },
  inside('with', 'Takes a package of appointments.', 'with ember'),
  inside(
    'because',
    'Why this recipe is as it is, in your words.',
    'because "Less weight at the same stiffness, for a quicker response."',
  ),
  {
    word: 'because',
    around: ['allow', 'accept'],
    sentence: 'The reason; without one it is not granted.',
    example: 'allow 2 because "the client asked for both"',
  },
  inside('note', 'Anything worth keeping. Nothing is computed from it.', 'note "Opened up after two weeks."'),
  inside(
    'allow',
    'Lets this one recipe vary more than the shop’s limit, with the reason.',
    'allow 2 because "the client asked for both"',
  ),
  inside(
    'accept',
    'Silences one finding in this definition, with the reason. When it no longer applies, you are told.',
    'accept too-many-changes because "the client asked for both"',
  ),
  inside('vary', 'How many things an instrument may change at once; a group counts one.', 'vary at most 1'),
  {
    word: 'at',
    around: ['vary'],
    sentence: '`vary at most` sets how many things an instrument may change at once.',
    example: 'vary at most 1',
  },
  {
    word: 'most',
    around: ['vary'],
    sentence: '`vary at most` sets how many things an instrument may change at once.',
    example: 'vary at most 1',
  },
  inside(
    'reading',
    'One occasion of measuring, with the conditions that make a number comparable.',
    'reading day-1 { strings-damped: yes  humidity: 45 %RH  resonance.top: 186 Hz }',
  ),
  inside(
    'rework',
    'What was done to the finished instrument between two readings: what holds from then on. The instrument is its own control.',
    'rework "shaved the X" { change bracing.x-bass.height: 15.9 mm -> 15.2 mm }',
  ),
  inside(
    'request',
    'What the client asked for later, with the date; you are told whether it is still free.',
    'request 2026-04-28 { nut.width: 46 mm }',
  ),
  {
    word: 'mode',
    around: ['property'],
    sentence: 'A tap of the free blank by its nodal lines: those along the grain first, then those across it.',
    example: 'tap { along: 72 Hz  twist: 47.5 Hz  mode (1,2): 120.5 Hz  mode (2,1): 174 Hz }',
  },
  {
    word: 'unknown',
    around: ['property', 'change'],
    sentence: 'A value you know you do not know. Nothing is computed from it, and nothing is guessed.',
    example: 'top.thickness: unknown',
  },
  {
    word: 'per',
    around: ['property'],
    sentence: 'Where the number comes from.',
    example: 'density: 421 kg/m³ per "weighed and measured, March"',
  },
];

function head(word: string, sentence: string, sample: string): Keyword {
  return { word, around: ['head'], sentence, example: sample };
}

/** The word a statement of its own name begins with. */
function inside(word: Statement['kind'], sentence: string, sample: string): Keyword {
  return { word, around: [word], sentence, example: sample };
}
