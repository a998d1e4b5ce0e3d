/** A picture as DXF: millimetres, a layer for each part, closed polylines, true circles and arcs. */
import {
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { type Label, type Layer, LAYERS, type LineType, type Shape } from '../plan.js';
import { LINE_LOOKS } from './line-looks.js';
import type { Picture } from './picture.js';

/** Colours of the AutoCAD colour index, so that layers can be told apart at the machine: 7 is black on white. */
const COLOURS: Readonly<Record<Layer, number>> = {
  outline: 7,
  'centre-line': 8,
  rim: 8,
  soundhole: 1,
  rosette: 6,
  braces: 5,
  notches: 4,
  bridge: 3,
  'bridge-plate': 30,
  neck: 7,
  frets: 1,
  strings: 9,
  grain: 8,
  thickness: 2,
  dimensions: 8,
  names: 8,
};

export function dxfOf({ shapes, labels }: Picture): string {
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  for (const [line, { dashes }] of Object.entries(LINE_LOOKS)) {
    if (dashes.length > 0)
      file.addLType(
        line,
        line,
        dashes.map((length, i) => (i % 2 === 0 ? length : -length)),
      );
  }
  for (const layer of LAYERS) {
    if ([...shapes, ...labels].some((each) => each.layer === layer)) file.addLayer(layer, COLOURS[layer]);
  }
  for (const shape of shapes) addShape(file, shape);
  for (const label of labels) addLabel(file, label);
  return file.stringify();
}

function addShape(file: DxfWriter, shape: Shape): void {
  const options = { layerName: shape.layer, lineType: lineTypeOf(shape.line) };
  switch (shape.kind) {
    case 'path':
      file.addLWPolyline(
        shape.points.map(([x, y]) => ({ point: point2d(x, y) })),
        { ...options, flags: shape.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
      );
      break;
    case 'circle':
      file.addCircle(point3d(...shape.centre), shape.radius, options);
      break;
    case 'arc':
      file.addArc(point3d(...shape.centre), shape.radius, shape.from, shape.to, options);
      break;
    case 'ellipse': {
      const [rx, ry] = shape.half;
      const major = rx >= ry ? point3d(rx, 0) : point3d(0, ry);
      file.addEllipse(point3d(...shape.centre), major, Math.min(rx, ry) / Math.max(rx, ry), 0, 2 * Math.PI, options);
      break;
    }
  }
}

function addLabel(file: DxfWriter, { layer, at, text, height, anchor, turned = 0 }: Label): void {
  file.addText(point3d(...at), height, plainText(text), {
    layerName: layer,
    rotation: turned,
    horizontalAlignment:
      anchor === 'start'
        ? TextHorizontalAlignment.Left
        : anchor === 'middle'
          ? TextHorizontalAlignment.Center
          : TextHorizontalAlignment.Right,
    verticalAlignment: TextVerticalAlignment.BaseLine,
    secondAlignmentPoint: point3d(...at),
  });
}

function lineTypeOf(line: LineType): string {
  return LINE_LOOKS[line].dashes.length > 0 ? line : 'Continuous';
}

/** A text of a DXF is one line; what is not ASCII is written by its number, which every reader knows. */
function plainText(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/[^\x20-\x7e]/g, (sign) => `\\U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`);
}
