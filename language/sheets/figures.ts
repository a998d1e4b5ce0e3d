/** Drawings on a sheet: the plan of the stage it belongs to, the client's picture, braces from the side. */
import type { Stage } from '../catalogue/property.js';
import {
  type BraceProfile,
  type Label,
  type Layer,
  LAYERS,
  type Plan,
  type Shape,
  viewOf,
  type ViewName,
} from '../reports/plan/plan.js';
import { profileShapes } from '../reports/plan/templates.js';
import { inlineSvg, scaleFor } from '../reports/plan/write/inline-svg.js';
import { type Picture, pictureOf } from '../reports/plan/write/picture.js';

interface Drawn {
  readonly view: ViewName;
  readonly layers: readonly Layer[];
  /** Parts whose dimensions are told. */
  readonly told: readonly string[];
}

const BODY: readonly Layer[] = ['outline', 'centre-line', 'dimensions'];

/** What of the plan is made at a stage. */
const AT_STAGE: ReadonlyMap<Stage, readonly Drawn[]> = new Map<Stage, readonly Drawn[]>([
  ['rosette', [{ view: 'top', layers: [...BODY, 'soundhole', 'rosette'], told: ['soundhole'] }]],
  [
    'thicknessing',
    [
      { view: 'top', layers: [...BODY, 'thickness', 'grain'], told: [] },
      { view: 'back', layers: [...BODY, 'thickness', 'grain'], told: [] },
    ],
  ],
  ['outline', [{ view: 'top', layers: [...BODY, 'soundhole'], told: ['body', 'soundhole'] }]],
  [
    'bracing',
    [
      { view: 'top', layers: [...BODY, 'soundhole', 'braces', 'notches', 'bridge-plate'], told: ['bracing'] },
      { view: 'back', layers: [...BODY, 'braces', 'notches'], told: [] },
    ],
  ],
  [
    'rim',
    [
      { view: 'top', layers: [...BODY, 'rim'], told: [] },
      { view: 'side', layers: ['outline', 'rim', 'dimensions'], told: ['body'] },
    ],
  ],
  [
    'neck',
    [
      {
        view: 'top',
        layers: ['outline', 'neck', 'frets', 'dimensions'],
        told: ['scale', 'nut', 'fingerboard', 'neck'],
      },
    ],
  ],
  [
    'neck-angle',
    [
      { view: 'side', layers: [...LAYERS], told: [] },
      { view: 'top', layers: [...BODY, 'neck', 'bridge'], told: ['scale', 'saddle', 'bridge'] },
    ],
  ],
  ['setup', [{ view: 'top', layers: [...BODY, 'soundhole', 'bridge'], told: ['bridge', 'saddle'] }]],
]);

/** Figures and arrows on a sheet, against those of a drawing on the wall. */
const SMALLER = 0.7;

/** mm: what a figure may take of a page. */
const ROOM = { width: 176, height: 84 };

export function stageFigure(plan: Plan, stage: Stage): string | undefined {
  const drawn = (AT_STAGE.get(stage) ?? []).flatMap((one) => pictureFor(plan, one) ?? []);
  if (drawn.length === 0) return undefined;
  const each = drawn.length === 1 ? ROOM : { ...ROOM, width: ROOM.width / drawn.length };
  return drawn.map((make) => make(each)).join('\n');
}

/** The instrument from the front, with nothing of how it is made inside. */
export function clientFigure(plan: Plan): string | undefined {
  const layers: readonly Layer[] = ['outline', 'soundhole', 'rosette', 'bridge', 'neck', 'frets', 'strings'];
  return pictureFor(plan, { view: 'top', layers, told: [] })?.({ width: 120, height: 120 });
}

type Fitted = (room: { readonly width: number; readonly height: number }) => string;

/** Undefined where nothing of it is known. */
function pictureFor(plan: Plan, { view: name, layers, told }: Drawn): Fitted | undefined {
  const view = viewOf(plan, name);
  if (!view || !view.shapes.some(({ layer }) => layer !== 'centre-line' && layer !== 'grain' && layers.includes(layer)))
    return undefined;
  const hidden = LAYERS.filter((layer) => !layers.includes(layer));
  const isTold = ({ part = '' }: { readonly part?: string }) =>
    told.some((each) => part === each || part.startsWith(`${each}.`));
  const kept = { ...view, dimensions: view.dimensions.filter(isTold) };
  return ({ width, height }) => {
    const scale = scaleFor(pictureOf(kept, name, plan.name, hidden), width, height);
    // Figures keep their size on paper, so the room they take is known only at the scale.
    const drawn = pictureOf(kept, name, plan.name, hidden, scale / SMALLER);
    return inlineSvg(enlarged(drawn, scale / SMALLER), scaleFor(drawn, width, height));
  };
}

/** Labels that are no dimensions keep their size on paper too. */
function enlarged(picture: Picture, scale: number): Picture {
  return {
    ...picture,
    labels: picture.labels.map((label) =>
      label.layer === 'dimensions' ? label : { ...label, height: label.height / scale },
    ),
  };
}

/** A brace from the side with its heights at its stations, at a third of its size, its name below it. */
export function profileFigure(profile: BraceProfile, length: (mm: number) => string): string {
  const scale = 1 / 3;
  const { part, stations, height, title } = profile;
  const size = 2.5 / scale;
  const shapes: Shape[] = [...profileShapes(profile, [0, 0])];
  const labels: Label[] = stations.map(({ at, height: there }) => ({
    ...{ layer: 'names', anchor: 'middle', height: size, part },
    at: [at, Math.max(there, height * 0.2) + 2 / scale],
    text: length(there),
  }));
  const along = stations.map(({ at }): Label => ({
    layer: 'names',
    anchor: 'middle',
    height: size * 0.9,
    at: [at, -4.5 / scale],
    text: length(at),
    part,
  }));
  for (const { at, height: there } of stations) {
    shapes.push({
      kind: 'path',
      layer: 'braces',
      line: 'thin',
      part,
      points: [
        [at, 0],
        [at, there],
      ],
      closed: false,
    });
  }
  const name: Label = { layer: 'names', anchor: 'start', height: size, at: [0, -9.5 / scale], text: title, part };
  return inlineSvg({ name: part, title, shapes, labels: [...labels, ...along, name] }, scale);
}
