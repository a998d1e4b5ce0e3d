/** The plan as a page draws it: marks in the page's own direction, neck up, with the station of the neck end at y = 0; mm. */
import type { Workshop } from '../../recipes/workshop.js';
import { english } from '../../wording/wording.js';
import { partInWords } from '../part-words.js';
import { simplified } from './geometry.js';
import {
  type Box,
  type Label,
  type Layer,
  LAYERS,
  type LineType,
  type Point,
  type Shape,
  type ViewName,
} from './plan.js';
import { planOf } from './plan-of.js';
import { boxOfPicture, pictureOf } from './write/picture.js';
import { pathData } from './write/svg.js';

export interface PlanMark {
  readonly layer: Layer;
  readonly line: LineType;
  readonly part?: string;
  /** Path of SVG. */
  readonly d: string;
}

export interface PlanLabel extends Pick<Label, 'layer' | 'text' | 'height' | 'anchor' | 'part'> {
  readonly x: number;
  readonly y: number;
  /** Degrees clockwise. */
  readonly turned: number;
}

export interface PlanPicture {
  readonly name: string;
  /** mm: station of the neck end of the body, at y = 0 of the page. */
  readonly length: number;
  readonly views: readonly {
    readonly name: ViewName;
    readonly box: Box;
    readonly marks: readonly PlanMark[];
    readonly labels: readonly PlanLabel[];
  }[];
  readonly layers: readonly { readonly key: Layer; readonly title: string }[];
  /** Parts this recipe says something else of than its parent, in words. */
  readonly changed: readonly { readonly part: string; readonly title: string; readonly changes: readonly string[] }[];
}

/** Undefined when there is no model, recipe or build of this name. */
export function planPicture({ workshop }: { readonly workshop: Workshop }, name: string): PlanPicture | undefined {
  const plan = planOf(workshop, name);
  if (!plan) return undefined;
  const { wording } = workshop;
  const pictures = plan.views.map((view) => ({ view: view.name, picture: pictureOf(view, view.name, plan.name) }));
  const drawn = pictures.filter(({ picture }) => picture.shapes.some(({ layer }) => layer === 'outline'));
  const outline = drawn[0]?.picture.shapes.find(({ layer }) => layer === 'outline');
  const length = outline?.kind === 'path' ? Math.max(...outline.points.map(([, y]) => y)) : 0;
  const place = ([x, y]: Point): Point => [x, length - y];
  const used = new Set(drawn.flatMap(({ picture }) => picture.shapes.map(({ layer }) => layer)));
  return {
    name,
    length,
    views: drawn.map(({ view, picture }) => {
      const { left, right, bottom, top } = boxOfPicture(picture);
      return {
        name: view,
        box: { left, right, bottom: length - bottom, top: length - top },
        marks: picture.shapes.map((shape) => markOf(shape, place)),
        labels: picture.labels.map((label) => labelOf(label, place)),
      };
    }),
    layers: LAYERS.filter((layer) => used.has(layer)).map((key) => ({ key, title: wording.text(TITLES[key]) })),
    changed: plan.changed.map(({ part, changes }) => ({ part, title: partInWords(part, wording), changes })),
  };
}

/** mm: nobody sees less on a screen. */
const SEEN = 0.05;

function markOf(shape: Shape, place: (p: Point) => Point): PlanMark {
  const { layer, line, part } = shape;
  const plain: Shape = shape.kind === 'path' ? { ...shape, points: simplified(shape.points, SEEN) } : shape;
  return { layer, line, ...(part === undefined ? {} : { part }), d: pathData(plain, place) };
}

function labelOf({ layer, text, height, anchor, at, turned = 0, part }: Label, place: (p: Point) => Point): PlanLabel {
  const [x, y] = place(at);
  return { layer, text, height, anchor, x, y, turned: -turned, ...(part === undefined ? {} : { part }) };
}

const TITLES: Readonly<Record<Layer, string>> = {
  outline: english('outline'),
  'centre-line': english('centre line'),
  rim: english('sides, linings, blocks'),
  soundhole: english('soundhole'),
  rosette: english('rosette'),
  braces: english('braces'),
  notches: english('notches'),
  bridge: english('bridge'),
  'bridge-plate': english('bridge plate'),
  neck: english('neck'),
  frets: english('frets'),
  strings: english('strings'),
  grain: english('grain'),
  thickness: english('thickness'),
  dimensions: english('dimensions'),
  names: english('names'),
};
