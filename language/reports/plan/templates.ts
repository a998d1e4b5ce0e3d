/** Templates at full size: what is cut along, each a picture of its own. */
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { english } from '../../wording/wording.js';
import * as body from './body-view.js';
import { braceShapes, notchShapes, profilesOf } from './braces-view.js';
import * as bridge from './bridge-view.js';
import { type DrawnBrace, inMm, inMmIf, outlineRing } from './drawn-from.js';
import { boxOf } from './geometry.js';
import * as neck from './neck-view.js';
import type { BraceProfile, Label, Layer, Point, Shape } from './plan.js';
import { rectangle, stroke } from './shapes.js';
import { unrolledSide } from './unrolled-side.js';
import { boxOfPicture, type Picture } from './write/picture.js';

/** Everything a template may be made from. */
export interface TemplateSource {
  readonly ask: Ask;
  readonly bracesOf: (root: 'bracing' | 'back-bracing') => readonly DrawnBrace[];
  readonly partTitle: (part: string) => string;
  /** mm as the shop writes a length in a drawing. */
  readonly length: (mm: number) => string;
}

export interface Template {
  readonly key: string;
  /** English, to be said in the reader’s language. */
  readonly title: string;
  readonly draw: (source: TemplateSource) => Omit<Picture, 'name' | 'title'>;
}

export const TEMPLATES: readonly Template[] = [
  {
    key: 'outline',
    title: english('Outline'),
    draw: ({ ask }) => only([...body.outlineShapes(ask), ...body.centreLine(ask)]),
  },
  { key: 'half-outline', title: english('Half outline'), draw: ({ ask }) => only(halfOutline(ask)) },
  {
    key: 'soundhole',
    title: english('Soundhole and rosette'),
    draw: ({ ask }) =>
      only([
        ...body.holeShapes(ask),
        ...(inMmIf(ask, 'rosette.inner-diameter') === undefined ? [] : body.rosetteShapes(ask)),
      ]),
  },
  { key: 'bracing', title: english('Bracing of the top'), draw: (source) => layOut(source, 'bracing') },
  { key: 'back-bracing', title: english('Bracing of the back'), draw: (source) => layOut(source, 'back-bracing') },
  { key: 'braces', title: english('Braces from the side'), draw: bracesFromSide },
  { key: 'bridge', title: english('Bridge'), draw: ({ ask }) => only(bridgeWhole(ask)) },
  {
    key: 'bridge-plate',
    title: english('Bridge plate'),
    draw: ({ ask }) => only(solid(bridge.bridgePlateShapes(ask))),
  },
  {
    key: 'fingerboard',
    title: english('Fingerboard with its slots'),
    draw: ({ ask }) => only([...neck.boardShapes(ask), ...neck.fretShapes(ask)]),
  },
  { key: 'mould', title: english('Half of the mould'), draw: ({ ask }) => only(mould(ask)) },
  { key: 'dishes', title: english('Arcs of the dishes'), draw: dishes },
  { key: 'side', title: english('Sides laid flat'), draw: sides },
];

/** What is drawn for `key`; the title in the reader's language. */
export function templateOf(
  key: string,
  source: TemplateSource,
  title: (english: string) => string,
): Picture | undefined {
  const template = TEMPLATES.find((one) => one.key === key);
  if (!template) return undefined;
  const drawn: Picture = { name: key, title: title(template.title), ...template.draw(source) };
  const { left, bottom } = boxOfPicture(drawn);
  const name: Label = { layer: 'names', at: [left, bottom - 8], text: drawn.title, height: 3.5, anchor: 'start' };
  return { ...drawn, labels: [...drawn.labels, name] };
}

function only(shapes: readonly Shape[]): Omit<Picture, 'name' | 'title'> {
  return { shapes, labels: [] };
}

/** What is hidden in the plan is cut along here. */
function solid(shapes: readonly Shape[]): readonly Shape[] {
  return shapes.map((shape) => ({ ...shape, line: 'visible' }));
}

/** The bass side, closed along the centre line. */
function halfOutline(ask: Ask): readonly Shape[] {
  return [closed('outline', 'body', bassSide(ask))];
}

function bassSide(ask: Ask): readonly Point[] {
  const ring = outlineRing(ask);
  const neckEnd = ring.findIndex(([x], i) => i > 0 && x === 0);
  return ring.slice(0, neckEnd + 1);
}

function closed(layer: Layer, part: string, points: readonly Point[]): Shape {
  return { kind: 'path', layer, line: 'visible', part, points, closed: true };
}

function layOut({ ask, bracesOf }: TemplateSource, root: 'bracing' | 'back-bracing'): Omit<Picture, 'name' | 'title'> {
  const braces = bracesOf(root);
  const told = root === 'bracing' ? ['soundhole.station', 'bridge.plate.length'] : [];
  const has = (path: string) => told.includes(path) && ask.numberIf(path) !== undefined;
  return only([
    ...body.outlineShapes(ask),
    ...body.centreLine(ask),
    ...braceShapes(braces),
    ...notchShapes(braces),
    ...(has('soundhole.station') ? body.holeShapes(ask) : []),
    ...(has('bridge.plate.length') ? bridge.bridgePlateShapes(ask) : []),
  ]);
}

/** mm between two braces on the sheet, and below each for its name. */
const ROOM = 14;

function bracesFromSide({ bracesOf, partTitle }: TemplateSource): Omit<Picture, 'name' | 'title'> {
  const profiles = profilesOf([...bracesOf('bracing'), ...bracesOf('back-bracing')], partTitle);
  const shapes: Shape[] = [];
  const labels: Label[] = [];
  let bottom = 0;
  for (const profile of profiles) {
    bottom -= profile.height + ROOM;
    shapes.push(...profileShapes(profile, [0, bottom]));
    labels.push({
      layer: 'names',
      at: [0, bottom - 5],
      text: profile.title,
      height: 3.5,
      anchor: 'start',
      part: profile.part,
    });
  }
  return { shapes, labels };
}

/** The brace standing on its glued face, its notches as they are cut, with its lower left corner at a place. */
export function profileShapes({ shape, notches, part }: BraceProfile, [x, y]: Point): readonly Shape[] {
  const at = ([px, py]: Point): Point => [x + px, y + py];
  return [
    closed('braces', part, shape.map(at)),
    ...notches.map(({ from, to, depth, side }): Shape => {
      const crest = heightAt(shape, (from + to) / 2);
      const [low, high] = side === 'face' ? [0, depth] : [crest - depth, crest];
      return rectangle('notches', 'thin', part, at([(from + to) / 2, (low + high) / 2]), [to - from, high - low]);
    }),
  ];
}

function heightAt(shape: readonly Point[], at: number): number {
  const next = shape.findIndex(([x], i) => i > 0 && x >= at);
  return shape[Math.max(1, next)]?.[1] ?? 0;
}

function bridgeWhole(ask: Ask): readonly Shape[] {
  const knows = (path: string) => ask.numberIf(path) !== undefined;
  const saddle = knows('saddle.string-spread') || knows('saddle.length');
  const pins = saddle && knows('bridge.pins.distance') && (knows('bridge.pins.count') || knows('strings.count'));
  return [
    ...bridge.bridgeShapes(ask),
    ...(saddle ? bridge.saddleShapes(ask) : []),
    ...(pins && ask.word('bridge.kind') !== 'tie-block' ? bridge.pinShapes(ask) : []),
    ...(saddle && ask.word('bridge.kind') === 'tie-block' ? bridge.tieBlock(ask) : []),
  ];
}

/** mm of wood around the outline. */
const MOULD = 60;

function mould(ask: Ask): readonly Shape[] {
  const side = bassSide(ask);
  const { left, bottom, top } = boxOf(side);
  const block: readonly Point[] = [
    [0, top + MOULD],
    [left - MOULD, top + MOULD],
    [left - MOULD, bottom - MOULD],
    [0, bottom - MOULD],
  ];
  return [closed('outline', 'body', [...side, ...block])];
}

/** mm of the strip below the lowest point of an arc. */
const STRIP = 30;

/** An arc for each plate as wide as its lower bout, hollow side up, on a straight foot. */
function dishes({ ask, length }: TemplateSource): Omit<Picture, 'name' | 'title'> {
  const wide = inMm(ask, 'body.length');
  const shapes: Shape[] = [];
  const labels: Label[] = [];
  (['top', 'back'] as const).forEach((plate, i) => {
    const radius = inMmIf(ask, `body.${plate}-radius`);
    if (radius === undefined) return;
    const foot = -i * (STRIP + 40);
    const half = (Math.asin(wide / 2 / radius) * 180) / Math.PI;
    const rise = radius - Math.sqrt(radius * radius - (wide / 2) ** 2);
    const [left, right] = [-wide / 2, wide / 2];
    shapes.push(
      {
        ...{ kind: 'arc', layer: 'outline', line: 'visible', part: plate },
        ...{ centre: [0, foot + STRIP + radius], radius, from: 270 - half, to: 270 + half },
      },
      stroke(
        'outline',
        'visible',
        plate,
        [left, foot + STRIP + rise],
        [left, foot],
        [right, foot],
        [right, foot + STRIP + rise],
      ),
    );
    labels.push({
      layer: 'names',
      at: [0, foot + STRIP / 2],
      text: `R ${length(radius)}`,
      height: 3.5,
      anchor: 'middle',
      part: plate,
    });
  });
  return { shapes, labels };
}

function sides({ ask, length, partTitle }: TemplateSource): Omit<Picture, 'name' | 'title'> {
  const isCut = ask.numberIf('cutaway.depth') !== undefined;
  const shapes: Shape[] = [];
  const labels: Label[] = [];
  (isCut ? (['bass', 'treble'] as const) : (['bass'] as const)).forEach((side, i) => {
    const { ring, places, length: long, tailDepth, neckDepth } = unrolledSide(ask, side);
    const down = i * (Math.max(tailDepth, neckDepth) + 50);
    const at = ([x, y]: Point): Point => [x, y - down];
    const { top, bottom } = boxOf(ring);
    shapes.push(closed('outline', 'sides', ring.map(at)));
    for (const place of places) {
      shapes.push(stroke('centre-line', 'centre', 'sides', at([place.at, bottom - 4]), at([place.at, top + 4])));
      labels.push({
        layer: 'names',
        at: at([place.at, top + 6]),
        text: partTitle(`body.${place.name}`),
        height: 3,
        anchor: 'middle',
      });
    }
    labels.push({
      layer: 'names',
      at: at([4, bottom - 6]),
      text: `${partTitle('sides')} ${length(long)}`,
      height: 3,
      anchor: 'start',
    });
  });
  return { shapes, labels };
}
