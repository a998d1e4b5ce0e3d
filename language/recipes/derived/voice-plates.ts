/** What the solver knows of top and back, as what is heard needs it. */
import { taken } from './taken.js';
import { MechanicsError } from '../../mechanics/error.js';
import { gridWeights, onGrid } from '../../mechanics/plate/index.js';
import { energyShare } from '../../mechanics/voice/index.js';
import type { PlateModes } from '../evaluation/analyst.js';
import type { Ask } from '../evaluation/evaluation.js';
import { solved } from './mode-quantities.js';
import { saddleStation } from './layout/bridge-place.js';

export type PlateName = 'top' | 'back';

export interface VoicePlate {
  /** Index of the mode that moves most air. */
  readonly main: number;
  readonly modes: readonly VoiceMode[];
}

export interface VoiceMode {
  /** Hz, kg at the bridge, m² there. */
  readonly frequency: number;
  readonly mass: number;
  readonly area: number;
  /** m²/√kg and 1/√kg, at unit modal mass, one sign for both. */
  readonly volume: number;
  readonly atStrings: readonly number[];
  /** Share of the strain energy by the path of the loss that goes with it: `top.wood.loss.along`. */
  readonly shares: ReadonlyMap<string, number>;
  /** d(frequency)/d(number of the recipe), by its path. */
  readonly slopes: ReadonlyMap<string, number>;
}

/** m between the outer strings at the saddle, where the recipe is silent. (common practice) */
const USUAL_SPREAD = 0.056;

export function voicePlate(ask: Ask, plate: PlateName, strings: number): VoicePlate {
  const analysis = solved(ask, plate);
  const felt = plate === 'top' ? atStrings(ask, analysis, strings) : analysis.modes.map(() => []);
  return {
    main: analysis.main,
    modes: analysis.modes.map(({ frequency, effectiveMass, effectiveArea, volume }, mode) => ({
      frequency,
      mass: effectiveMass,
      area: effectiveArea,
      volume,
      atStrings: felt[mode]!,
      shares: sharesOf(ask, frequency, analysis.frequencySlopes[mode]!),
      slopes: analysis.frequencySlopes[mode]!,
    })),
  };
}

/** Movement of the saddle under each string, the highest first, by mode. */
function atStrings(ask: Ask, { drawing }: PlateModes, strings: number): readonly (readonly number[])[] {
  const spread = ask.numberOr(
    'saddle.string-spread',
    USUAL_SPREAD,
    'the outer strings are taken to lie 56 mm apart at the saddle',
  );
  const bass = taken(ask, 'bridge.offset') - (strings > 1 ? spread / 2 : 0);
  const step = strings > 1 ? spread / (strings - 1) : spread;
  const weights = gridWeights(drawing, { x0: saddleStation(ask), y0: bass, step, rows: 1, columns: strings });
  return drawing.shapes.map((shape) => {
    const row = [...onGrid(weights, shape)].reverse();
    if (row.some(Number.isNaN)) throw new MechanicsError('bridge', 'The saddle does not lie on the top.');
    return row;
  });
}

/** Which loss goes with which modulus of a wood. */
const LOSS_OF: ReadonlyMap<string, string> = new Map([
  ['modulus.along', 'loss.along'],
  ['modulus.across', 'loss.across'],
  ['modulus.twist', 'loss.twist'],
  ['modulus.through-shear', 'loss.twist'],
  ['modulus.rolling-shear', 'loss.twist'],
]);

function sharesOf(ask: Ask, frequency: number, slopes: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  for (const [path, slope] of slopes) {
    const wood = path.lastIndexOf('.modulus.');
    const loss = LOSS_OF.get(path.slice(wood + 1));
    if (wood < 0 || loss === undefined) continue;
    const key = `${path.slice(0, wood)}.${loss}`;
    shares.set(key, (shares.get(key) ?? 0) + energyShare(frequency, ask.number(path), slope));
  }
  return shares;
}
