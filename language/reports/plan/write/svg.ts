/** A picture as SVG at full size: width and height in mm, one user unit a millimetre, a group for each layer. */
import { type Layer, LAYERS, type Point, type Shape, type Label } from '../plan.js';
import { visible } from '../../../wording/visible.js';
import { LINE_LOOKS } from './line-looks.js';
import { boxOfPicture, type Picture } from './picture.js';

/** mm around what is drawn. */
const MARGIN = 5;

export interface SvgOptions {
  readonly language?: string;
  /** Of the paper; lines keep their width on it. */
  readonly scale?: number;
  /** Lines so much thinner than those of a drawing on the wall. */
  readonly fine?: number;
}

export function svgOf(picture: Picture, { language = 'en', scale = 1, fine = 1 }: SvgOptions = {}): string {
  const { left, bottom, right, top } = boxOfPicture(picture);
  const [width, height] = [right - left + 2 * MARGIN, top - bottom + 2 * MARGIN];
  const place = ([x, y]: Point): Point => [x - left + MARGIN, top + MARGIN - y];
  const groups = LAYERS.flatMap((layer) => groupOf(layer, picture, place, scale / fine));
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width * scale)}mm" height="${mm(height * scale)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" lang="${language}">
<title>${escapedXml(picture.title)}</title>
${groups.join('\n')}
</svg>
`;
}

function groupOf(layer: Layer, picture: Picture, place: (p: Point) => Point, scale: number): readonly string[] {
  const shapes = picture.shapes
    .filter((shape) => shape.layer === layer)
    .map((shape) => shapeAsSvg(shape, place, scale));
  const labels = picture.labels.filter((label) => label.layer === layer).map((label) => labelAsSvg(label, place));
  if (shapes.length + labels.length === 0) return [];
  return [`<g id="${layer}" fill="none" stroke="#000" stroke-linejoin="round">`, ...shapes, ...labels, '</g>'];
}

function shapeAsSvg(shape: Shape, place: (p: Point) => Point, scale: number): string {
  const line = LINE_LOOKS[shape.line];
  const [width, dashes] = [mm(line.width / scale), line.dashes.map((dash) => mm(dash / scale))];
  const look = `stroke-width="${width}"${dashes.length > 0 ? ` stroke-dasharray="${dashes.join(' ')}"` : ''}`;
  const data = shape.part === undefined ? '' : ` data-part="${escapedXml(shape.part)}"`;
  if (shape.kind === 'circle') {
    const [x, y] = place(shape.centre);
    return `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(shape.radius)}" ${look}${data}/>`;
  }
  if (shape.kind === 'ellipse') {
    const [x, y] = place(shape.centre);
    return `<ellipse cx="${mm(x)}" cy="${mm(y)}" rx="${mm(shape.half[0])}" ry="${mm(shape.half[1])}" ${look}${data}/>`;
  }
  return `<path d="${pathData(shape, place)}" ${look}${data}/>`;
}

/** The path of a shape in the page's places: `M… L… Z`. */
export function pathData(shape: Shape, place: (p: Point) => Point): string {
  const at = (p: Point) => place(p).map(mm).join(' ');
  if (shape.kind === 'path') {
    return `M${shape.points.map(at).join('L')}${shape.closed ? 'Z' : ''}`;
  }
  const [cx, cy] = shape.centre;
  const [rx, ry] = shape.kind === 'ellipse' ? shape.half : [shape.radius, shape.radius];
  const on = (degrees: number): Point => [
    cx + rx * Math.cos((degrees * Math.PI) / 180),
    cy + ry * Math.sin((degrees * Math.PI) / 180),
  ];
  if (shape.kind !== 'arc') {
    return `M${at(on(0))}A${mm(rx)} ${mm(ry)} 0 1 0 ${at(on(180))}A${mm(rx)} ${mm(ry)} 0 1 0 ${at(on(360))}Z`;
  }
  const span = (((shape.to - shape.from) % 360) + 360) % 360;
  return `M${at(on(shape.from))}A${mm(rx)} ${mm(ry)} 0 ${span > 180 ? 1 : 0} 0 ${at(on(shape.to))}`;
}

function labelAsSvg({ at, text, height, anchor, turned = 0 }: Label, place: (p: Point) => Point): string {
  const [x, y] = place(at);
  const turn = turned === 0 ? '' : ` transform="rotate(${mm(-turned)} ${mm(x)} ${mm(y)})"`;
  return `<text x="${mm(x)}" y="${mm(y)}" font-family="sans-serif" font-size="${mm(height / CAP)}" text-anchor="${anchor}" fill="#000" stroke="none"${turn}>${escapedXml(text)}</text>`;
}

/** Capitals and figures are some 0.72 of the size of a sans-serif letter. */
const CAP = 0.72;

/** To the thousandth of a millimetre. */
export function mm(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}

export function escapedXml(text: string): string {
  return visible(text).replace(/[&<>"'#]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
