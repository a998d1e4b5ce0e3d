/** What a file is made from: shapes and labels on their layers, in millimetres, y upwards. */
import { boxOf, cornersOf } from '../geometry.js';
import { dimensionLines } from '../dimension-lines.js';
import type { Box, Label, Layer, Point, Shape, View } from '../plan.js';

export interface Picture {
  /** ASCII, for the name of a file: `outline`. */
  readonly name: string;
  readonly title: string;
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
}

/** The view with its dimensions drawn out. `scale`: of the paper. */
export function pictureOf(view: View, name: string, title: string, hidden: readonly Layer[] = [], scale = 1): Picture {
  const drawn = view.dimensions.map((dimension) => dimensionLines(dimension, scale));
  const isShown = ({ layer }: { readonly layer: Layer }) => !hidden.includes(layer);
  return {
    name,
    title,
    shapes: [...view.shapes, ...drawn.flatMap(({ shapes }) => shapes)].filter(isShown),
    labels: [...view.labels, ...drawn.flatMap(({ labels }) => labels)].filter(isShown),
  };
}

/** Room that a figure takes: some 0.6 of its height for each letter. (ISO 3098, from memory) */
export const LETTER = 0.6;

export function boxOfPicture({ shapes, labels }: Picture): Box {
  return boxOf([...shapes.flatMap(cornersOf), ...labels.flatMap(cornersOfLabel)]);
}

function cornersOfLabel({ at, text, height, anchor, turned = 0 }: Label): readonly Point[] {
  const width = text.length * height * LETTER;
  const start = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  const angle = (turned * Math.PI) / 180;
  return [
    [start, 0],
    [start + width, height],
    [start, height],
    [start + width, 0],
  ].map(([x, y]): Point => [
    at[0] + x! * Math.cos(angle) - y! * Math.sin(angle),
    at[1] + x! * Math.sin(angle) + y! * Math.cos(angle),
  ]);
}

/** Side by side, `apart` mm between them, on one bottom line. */
export function beside(pictures: readonly Picture[], name: string, title: string, apart = 20): Picture {
  let left = 0;
  const placed = pictures.map((picture) => {
    const box = boxOfPicture(picture);
    const by: Point = [left - box.left, -box.bottom];
    left += box.right - box.left + apart;
    return shifted(picture, by);
  });
  return {
    name,
    title,
    shapes: placed.flatMap(({ shapes }) => shapes),
    labels: placed.flatMap(({ labels }) => labels),
  };
}

export function shifted(picture: Picture, [dx, dy]: Point): Picture {
  const by = ([x, y]: Point): Point => [x + dx, y + dy];
  return {
    ...picture,
    shapes: picture.shapes.map((shape): Shape => {
      return shape.kind === 'path'
        ? { ...shape, points: shape.points.map(by) }
        : { ...shape, centre: by(shape.centre) };
    }),
    labels: picture.labels.map((label) => ({ ...label, at: by(label.at) })),
  };
}
