/**
 * The plan of an instrument as plain data, one for screen, sheet and file. Millimetres throughout, y upwards: in views of
 * the plates y is the station from the tail and x the offset from the centre line, bass side negative, seen from the
 * front; so the neck is up.
 */

/** mm: to the right, upwards. */
export type Point = readonly [number, number];

/** What can be shown and hidden by itself, and is a layer of its own in a file for a machine. */
export const LAYERS = [
  'outline',
  'centre-line',
  'rim',
  'soundhole',
  'rosette',
  'braces',
  'notches',
  'bridge',
  'bridge-plate',
  'neck',
  'frets',
  'strings',
  'grain',
  'thickness',
  'dimensions',
  'names',
] as const;
export type Layer = (typeof LAYERS)[number];

/**
 * Lines as a technical drawing has them (ISO 128-2:2020, types from memory): `visible` 01.2 continuous wide, `thin` 01.1
 * continuous narrow, `hidden` 02.1 dashed narrow, `centre` 04.1 long dash and dot, `phantom` 05.1 long dash and two dots,
 * for what is only told about.
 */
export type LineType = 'visible' | 'thin' | 'hidden' | 'centre' | 'phantom' | 'hatch';

interface Drawn {
  readonly layer: Layer;
  readonly line: LineType;
  /** The part of the instrument it shows: `bracing.x-bass`. */
  readonly part?: string;
}

export type Shape =
  | (Drawn & { readonly kind: 'path'; readonly points: readonly Point[]; readonly closed: boolean })
  | (Drawn & { readonly kind: 'circle'; readonly centre: Point; readonly radius: number })
  /** Half axes along x and y. */
  | (Drawn & { readonly kind: 'ellipse'; readonly centre: Point; readonly half: Point })
  /** Counter-clockwise, degrees from the x axis. */
  | (Drawn & {
      readonly kind: 'arc';
      readonly centre: Point;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
    });

export interface Label {
  readonly layer: Layer;
  readonly at: Point;
  readonly text: string;
  /** mm */
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees, counter-clockwise; absent: upright. */
  readonly turned?: number;
  readonly part?: string;
}

/**
 * A length told with its line, after ISO 129-1: extension lines from the two points, the line `away` mm beside them (to the
 * left of the way from `from` to `to` where above zero), the figure over its middle. `along`: measured along x or y only.
 */
export interface Dimension {
  readonly kind: 'length';
  readonly from: Point;
  readonly to: Point;
  readonly along?: 'x' | 'y';
  readonly away: number;
  /** Lines side by side: which one this is, counted from the nearest, so that they keep their distance on paper. */
  readonly row?: number;
  readonly text: string;
  readonly part?: string;
}

/** A figure at the end of a leader. */
export interface Note {
  readonly kind: 'note';
  readonly at: Point;
  readonly from: Point;
  readonly text: string;
  readonly part?: string;
}

export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

export type ViewName = 'top' | 'back' | 'side';

export interface View {
  readonly name: ViewName;
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
  readonly dimensions: readonly (Dimension | Note)[];
}

/** What was not drawn, and what would have to be known. */
export interface NotDrawn {
  readonly part: string;
  readonly paths: readonly string[];
  /** Why it cannot be drawn although nothing is missing. */
  readonly trouble?: string;
}

/** A part of which this recipe says otherwise than its parent. */
export interface ChangedPart {
  readonly part: string;
  /** `height 15 mm → 14 mm`, one for each value. */
  readonly changes: readonly string[];
}

/** A brace from the side: its glued face lies on y = 0, its first end at x = 0. */
export interface BraceProfile {
  readonly part: string;
  /** `X-brace, bass` */
  readonly title: string;
  readonly length: number;
  readonly height: number;
  /** Closed. */
  readonly shape: readonly Point[];
  /** Where another brace crosses it: from, to, and how deep the notch is cut from the crest or the glued face. */
  readonly notches: readonly Notch[];
  readonly stations: readonly { readonly at: number; readonly height: number }[];
}

export interface Notch {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
  /** `crest`: cut from above, the brace runs through underneath; `face`: cut from the glued face. */
  readonly side: 'crest' | 'face';
  readonly with: string;
}

export interface Plan {
  readonly name: string;
  readonly views: readonly View[];
  readonly profiles: readonly BraceProfile[];
  readonly changed: readonly ChangedPart[];
  readonly missing: readonly NotDrawn[];
}

export function viewOf(plan: Plan, name: ViewName): View | undefined {
  return plan.views.find((view) => view.name === name);
}
