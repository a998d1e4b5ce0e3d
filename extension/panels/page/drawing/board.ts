/** What every piece of the drawing draws from. */
import type { Drawing, DrawnPart, ModeShapes } from '../../../../language/server/protocol.js';
import type { DrawingAction, DrawingContent, DrawingSubject, DrawingWords } from '../../drawing-messages.js';
import { fill, type Shown } from '../page.js';

export interface DrawingView {
  /** Which mode is drawn, from 0. */
  readonly mode: number;
  /** Path of the part under the pointer or with the focus. */
  readonly pointed: string;
  /** How much nearer than the whole plan; 1: the whole. */
  readonly zoom: number;
  /** Head and neck too, not the body alone. */
  readonly whole: boolean;
  /** What is in the middle of the frame, in the plan's mm; null: the plan's own middle. */
  readonly middle: readonly [number, number] | null;
  /** Layers not shown. */
  readonly hidden: readonly string[];
  /** Whether the list of layers is open. */
  readonly layers: boolean;
  /** Whether a click sets a place to measure from. */
  readonly measure: boolean;
  readonly from: readonly [number, number] | null;
  readonly at: readonly [number, number] | null;
  /** Modes as a relief instead of flat. */
  readonly relief: boolean;
  /** Whether the relief swings. */
  readonly moving: boolean;
}

export interface Board extends Shown<DrawingSubject, DrawingContent, DrawingWords, DrawingView, DrawingAction> {
  readonly drawing: Drawing;
  readonly plate: 'top' | 'back';
  /** Null while parts and thickness are shown. */
  readonly modes: ModeShapes | null;
}

/** The braces of the plate shown, in the order of their numbers. */
export function bracesOf({ drawing, plate }: Board): readonly DrawnPart[] {
  return drawing.parts.filter((part) => part.kind === 'brace' && part.plate === plate);
}

/** A part as one calls it: `x-bass`, `bridge plate`. */
export function nameOf({ path, kind }: DrawnPart, words: DrawingWords): string {
  if (kind === 'plate') return path === 'top' ? words.top : words.back;
  if (kind === 'soundhole') return words.soundhole;
  if (kind === 'bridge') return words.bridge;
  if (kind === 'bridge-plate') return words.bridgePlate;
  return path.slice(path.indexOf('.') + 1);
}

/** Its numbers in a row: `width 7.9 mm · height 15.9 mm`. */
export function figuresIn({ figures }: DrawnPart, without: readonly string[] = []): string {
  return figures
    .filter(({ path }) => !without.includes(path))
    .map(({ path, value }) => `${path.replace(/[.-]/g, ' ')} ${value}`)
    .join(' · ');
}

export interface PartLink {
  readonly point: () => void;
  readonly go: () => void;
  readonly press: (event: KeyboardEvent) => void;
  readonly isPointed: boolean;
  /** What it is and where it leads, for reading aloud. */
  readonly label: string;
}

/** What makes something on the page stand for a part: pointed at, clicked, reached by keys. */
export function partLink({ look, act, view, words }: Board, part: DrawnPart): PartLink {
  const go = () => act({ kind: 'go-to', path: part.path });
  const name = nameOf(part, words);
  return {
    point: () => {
      if (view.pointed !== part.path) look({ pointed: part.path });
    },
    go,
    press: (event) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      go();
    },
    isPointed: view.pointed === part.path,
    label: fill(words.goTo, part.kind === 'brace' ? fill(words.brace, name) : name),
  };
}
