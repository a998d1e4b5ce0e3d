/**
 * The fingerboard of an instrument, and how what it comes to moves with the numbers behind it. What the solver gives of the
 * plates is taken as it is; everything else is asked for by path, and noted, so that one number at a time can be moved.
 */
import { takenAs } from '../../catalogue/taken-as.js';
import { taken } from './taken.js';
import { airDensity, airSoundSpeed } from '../../mechanics/body/air.js';
import {
  type Fingerboard,
  fingerboard,
  type PartMode,
  type SoundingString,
  type Summary,
  summaryOf,
  withString,
} from '../../mechanics/voice/index.js';
import type { Ask, Evaluation } from '../evaluation/evaluation.js';
import { type PlateName, type VoiceMode, type VoicePlate, voicePlate } from './voice-plates.js';

export interface Voice {
  readonly board: Fingerboard;
  readonly whole: Summary;
  /** By string, the highest first; undefined where no note of it is in the band. */
  readonly strings: readonly (Summary | undefined)[];
}

interface VoiceWithInputs extends Voice {
  /** What the board was made from: numbers by path, and the frequencies of the minor modes by a name of their own. */
  readonly numbers: ReadonlyMap<string, number>;
  readonly plates: Plates;
}

/** A number by its path, whether there or not. */
interface Numbers {
  number(path: string): number;
  /** As the catalogue takes it where nobody says anything. */
  taken(path: string): number;
  /** A number that has no path. */
  own(name: string, si: number): number;
}

interface Plates {
  readonly strings: number;
  readonly top: VoicePlate;
  readonly back: VoicePlate;
}

/** 1/Q of the air in the hole: its walls and edges. Within a factor of two. */
const AIR_LOSS = 0.015;

export function voiceOf(ask: Ask): Voice {
  return ask.shared('voice', makeVoice);
}

/** What is heard of an instrument, for somebody who looks at it; undefined while or where it cannot be worked out. */
export function heardOf(evaluation: Evaluation): Voice | undefined {
  const { outcome, absent, pending } = evaluation.part('voice', makeVoice);
  return pending || absent.length > 0 || 'failed' in outcome ? undefined : (outcome.made as Voice);
}

function makeVoice(ask: Ask): VoiceWithInputs {
  const members = ask.members('strings');
  if (members.length === 0) return ask.missing('strings');
  const plates: Plates = {
    strings: members.length,
    top: voicePlate(ask, 'top', members.length),
    back: voicePlate(ask, 'back', members.length),
  };
  ask.assume('the string is drawn straight up with 5 N, 120 mm from the saddle');
  ask.assume('the air in the hole is taken to lose 1/Q 0.015 by itself');
  const numbers = new Map<string, number>();
  const board = boardOf(plates, noting(ask, numbers));
  return { ...summed(board), numbers, plates };
}

function summed(board: Fingerboard): Voice {
  return {
    board,
    whole: summaryOf(board),
    strings: board.notes.map((row, s) => (row[0] ? summaryOf(board, s) : undefined)),
  };
}

function noting(ask: Ask, numbers: Map<string, number>): Numbers {
  const noted = (path: string, si: number) => {
    numbers.set(path, si);
    return si;
  };
  return {
    number: (path) => noted(path, ask.number(path)),
    taken: (path) => {
      const si = ask.numberIf(path);
      return si === undefined ? taken(ask, path) : noted(path, si);
    },
    own: noted,
  };
}

function boardOf(plates: Plates, numbers: Numbers): Fingerboard {
  const celsius = numbers.taken('shop.climate.temperature') - 273.15;
  const strings = Array.from({ length: plates.strings }, (_, s) => soundingString(numbers, s));
  const body = {
    modes: [
      ...plateModes('top', plates.top, numbers),
      ...plateModes('back', plates.back, numbers),
      hole(numbers, celsius),
    ],
    volume: numbers.number('body.volume'),
    airDensity: airDensity(celsius),
    soundSpeed: airSoundSpeed(celsius),
  };
  return fingerboard({ body, scale: numbers.number('scale'), strings });
}

/** Counted from 0. */
function soundingString(numbers: Numbers, string: number): SoundingString {
  const at = (what: string) => numbers.number(`strings.${string + 1}.${what}`);
  return { pitch: at('pitch'), massPerLength: at('unit-weight'), loss: at('loss') };
}

/** The string whose number this is, counted from 0. */
function stringOf(path: string): number | undefined {
  const [part, member] = path.split('.');
  return part === 'strings' && member !== undefined ? Number(member) - 1 : undefined;
}

function plateModes(plate: PlateName, { main, modes }: VoicePlate, numbers: Numbers): readonly PartMode[] {
  const rimLoss = numbers.taken(`${plate}.rim-loss`);
  return modes.flatMap((mode, k): readonly PartMode[] => {
    const isMain = k === main;
    // The strings reach the back through the air alone, and the air its main mode.
    if (!isMain && plate === 'back') return [];
    const frequency = isMain
      ? numbers.number(`${plate}.main-resonance`)
      : numbers.own(minorMode(plate, k), mode.frequency);
    const felt = isMain ? Math.sqrt(mode.mass / numbers.number(`${plate}.effective-mass`)) : 1;
    const pushed = isMain ? (felt * Math.abs(numbers.number(`${plate}.effective-area`))) / mode.area : 1;
    const damping = 2 * Math.PI * frequency * (rimLoss + woodLoss(mode, numbers));
    const atStrings = mode.atStrings.map((movement) => movement * felt);
    return [{ of: plate, main: isMain, frequency, damping, volume: mode.volume * pushed, atStrings }];
  });
}

function woodLoss({ shares }: VoiceMode, numbers: Numbers): number {
  let loss = 0;
  for (const [path, share] of shares) loss += share * numbers.number(path);
  return loss;
}

function minorMode(plate: PlateName, k: number): string {
  return `(${plate} mode ${k})`;
}

/** Soundhole and ports as one plug of unit mass: V² = C/ρ, C the conductance Σ S/L that gives the air its resonance in a rigid box. */
function hole(numbers: Numbers, celsius: number): PartMode {
  const rigid = 2 * Math.PI * numbers.number('resonance.rigid-air');
  const conductance = (rigid / airSoundSpeed(celsius)) ** 2 * numbers.number('body.volume');
  return {
    of: 'air',
    main: true,
    frequency: 0,
    damping: rigid * AIR_LOSS,
    volume: Math.sqrt(conductance / airDensity(celsius)),
    atStrings: [],
  };
}

/** A figure of the voice. */
export type FigureOf = (voice: Voice) => number | undefined;

/** d(figure)/d(number) by path of the recipe; of a minor mode by way of what moves its frequency. */
export function voiceSlopes(ask: Ask, figure: FigureOf): ReadonlyMap<string, number> {
  const { now, moved, plates } = ask.shared('voice, moved', makeMoved);
  const start = figure(now);
  const slopes = new Map<string, number>();
  if (start === undefined) return slopes;
  const add = (path: string, slope: number) => slopes.set(path, (slopes.get(path) ?? 0) + slope);
  for (const { path, step, voice } of moved) {
    const there = figure(voice);
    if (there === undefined) continue;
    const slope = (there - start) / step;
    const minor = minorSlopes(plates, path);
    if (minor) for (const [cause, by] of minor) add(cause, slope * by);
    else add(path, slope);
  }
  return slopes;
}

interface Moved {
  readonly now: Voice;
  readonly plates: Plates;
  readonly moved: readonly { readonly path: string; readonly step: number; readonly voice: Voice }[];
}

const STEP = 1e-5;

/** The voice with each number a little larger, once for all figures. */
function makeMoved(ask: Ask): Moved {
  const now = ask.shared('voice', makeVoice);
  const { numbers, plates } = now;
  const moved = [...numbers].flatMap(([path, si]) => {
    if (si === 0) return [];
    const step = Math.abs(si) * STEP;
    const read: Numbers = {
      number: (asked) => numbers.get(asked)! + (asked === path ? step : 0),
      taken: (asked) => {
        const known = numbers.get(asked);
        return known === undefined ? takenAs(asked)!.si : known + (asked === path ? step : 0);
      },
      own: (asked, known) => known + (asked === path ? step : 0),
    };
    const string = stringOf(path);
    const board =
      string === undefined ? boardOf(plates, read) : withString(now.board, string, soundingString(read, string));
    return [{ path, step, voice: summed(board) }];
  });
  return { now, plates, moved };
}

function minorSlopes({ top, back }: Plates, name: string): ReadonlyMap<string, number> | undefined {
  for (const [plate, { modes }] of [
    ['top', top],
    ['back', back],
  ] as const) {
    const found = modes.find((_, k) => minorMode(plate, k) === name);
    if (found) return found.slopes;
  }
  return undefined;
}
