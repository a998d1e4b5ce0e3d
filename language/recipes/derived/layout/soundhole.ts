/** The soundhole: one shape for its area, the solver, the drawings and the rules. */
import { taken } from '../taken.js';
import { type Soundhole, soundholeArea, soundholeEdge } from '../../../mechanics/body/soundhole.js';
import { polylineLength } from '../../../mechanics/body/half-widths.js';
import type { Ask } from '../../evaluation/derived-quantity.js';
import type { SharedPart } from '../../evaluation/shared-part.js';

/** How large the hole is, wherever it lies. */
type Opening = Omit<Soundhole, 'centre'>;

const OPENING: SharedPart<Opening> = { key: 'opening of the soundhole', make: makeOpening };

/** The hole where it lies. */
export const SOUNDHOLE: SharedPart<Soundhole> = { key: 'soundhole', make: makeHole };

/** m², round or not. Its place need not be known. */
export function areaOfSoundhole(ask: Ask): number {
  return soundholeArea({ ...ask.shared(OPENING.key, OPENING.make), centre: [0, 0] });
}

/** Missing without its place. */
export function soundholeOf(ask: Ask): Soundhole {
  return ask.shared(SOUNDHOLE.key, SOUNDHOLE.make);
}

/** m², of a patch of even width around the hole, inside; its place need not be known. Steiner’s formula: the hole is nowhere hollow. */
export function areaOfPatch(ask: Ask): number {
  const width = ask.number('soundhole.patch.width');
  const edge = soundholeEdge({ ...ask.shared(OPENING.key, OPENING.make), centre: [0, 0] }, POINTS_OF_EDGE);
  return polylineLength([...edge, edge[0]!].map(([x, y]) => ({ x, y }))) * width + Math.PI * width ** 2;
}

const POINTS_OF_EDGE = 240;

/** Undefined where the recipe says nothing of the size of a hole. */
export function soundholeIfAny(ask: Ask): Soundhole | undefined {
  const isSized = ['diameter', 'width', 'length'].some((size) => ask.numberIf(`soundhole.${size}`) !== undefined);
  return isSized ? soundholeOf(ask) : undefined;
}

function makeHole(ask: Ask): Soundhole {
  const opening = ask.shared(OPENING.key, OPENING.make);
  return { ...opening, centre: [ask.number('soundhole.station'), taken(ask, 'soundhole.offset')] };
}

function makeOpening(ask: Ask): Opening {
  const named = ask.word('soundhole.shape');
  const diameter = ask.numberIf('soundhole.diameter');
  const [width, length] = [ask.numberIf('soundhole.width'), ask.numberIf('soundhole.length')];
  // Asked for where neither is told: then the diameter is what is missing.
  if (diameter !== undefined || (width === undefined && length === undefined)) {
    const across = diameter ?? ask.number('soundhole.diameter');
    return { shape: 'oval', along: across, across };
  }
  if (named === 'other') ask.assume('the soundhole is taken to be as large as an oval of its length and width');
  return {
    shape: named === 'd-shaped' ? 'd-shaped' : 'oval',
    along: length ?? ask.number('soundhole.length'),
    across: width ?? ask.number('soundhole.width'),
  };
}
