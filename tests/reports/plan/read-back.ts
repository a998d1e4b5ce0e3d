/** Files read back by other libraries than those that wrote them, as plain lines in millimetres. */
import DxfParser, { type IDxf, type IEntity } from 'dxf-parser';

export type Point = readonly [number, number];

export interface ReadLine {
  readonly layer: string;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

export interface ReadCircle {
  readonly layer: string;
  readonly centre: Point;
  readonly radius: number;
}

export interface ReadDxf {
  readonly units: unknown;
  readonly layers: readonly string[];
  readonly lines: readonly ReadLine[];
  readonly circles: readonly ReadCircle[];
  readonly arcs: readonly IEntity[];
}

type Polyline = IEntity & {
  readonly vertices: readonly { readonly x: number; readonly y: number }[];
  readonly shape: boolean;
};
type Circle = IEntity & { readonly center: { readonly x: number; readonly y: number }; readonly radius: number };

export function readDxf(text: string): ReadDxf {
  const file = new DxfParser().parseSync(text) as IDxf;
  const lines = file.entities.filter(({ type }) => type === 'LWPOLYLINE') as Polyline[];
  const circles = file.entities.filter(({ type }) => type === 'CIRCLE') as Circle[];
  return {
    units: file.header['$INSUNITS'],
    layers: Object.keys(file.tables.layer.layers),
    lines: lines.map(({ layer, vertices, shape }) => ({
      layer,
      closed: shape,
      points: vertices.map(({ x, y }): Point => [x, y]),
    })),
    circles: circles.map(({ layer, center, radius }) => ({ layer, radius, centre: [center.x, center.y] })),
    arcs: file.entities.filter(({ type }) => type === 'ARC'),
  };
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly (readonly Point[])[];
  readonly text: string;
}

const MM = 25.4 / 72;
type Matrix = readonly [number, number, number, number, number, number];

export async function readPdf(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const file = await getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= file.numPages; n += 1) {
    const page = await file.getPage(n);
    const { fnArray, argsArray } = await page.getOperatorList();
    const lines: Point[][] = [];
    const kept: Matrix[] = [];
    let at: Matrix = [1, 0, 0, 1, 0, 0];
    fnArray.forEach((operator: number, i: number) => {
      const args = argsArray[i] as unknown[];
      if (operator === OPS.save) kept.push(at);
      else if (operator === OPS.restore) at = kept.pop() ?? at;
      else if (operator === OPS.transform) at = times(at, args as unknown as Matrix);
      else if (operator === OPS.constructPath) lines.push(...pathsIn(args, at, OPS));
    });
    const { items } = await page.getTextContent();
    const [, , width, height] = page.view as [number, number, number, number];
    const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    pages.push({ width: width * MM, height: height * MM, lines, text });
  }
  return pages;
}

function times(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[2] * b[1],
    a[1] * b[0] + a[3] * b[1],
    a[0] * b[2] + a[2] * b[3],
    a[1] * b[2] + a[3] * b[3],
    a[0] * b[4] + a[2] * b[5] + a[4],
    a[1] * b[4] + a[3] * b[5] + a[5],
  ];
}

function pathsIn(args: unknown[], m: Matrix, OPS: Readonly<Record<string, number>>): Point[][] {
  const [operators, numbers] = args as [number[], number[]];
  const paths: Point[][] = [];
  let k = 0;
  const next = (): Point => {
    const [x, y] = [numbers[k]!, numbers[k + 1]!];
    k += 2;
    return [(m[0] * x + m[2] * y + m[4]) * MM, (m[1] * x + m[3] * y + m[5]) * MM];
  };
  for (const operator of operators) {
    if (operator === OPS['moveTo']) paths.push([next()]);
    else if (operator === OPS['lineTo']) paths.at(-1)!.push(next());
    else if (operator === OPS['curveTo']) {
      next();
      next();
      paths.at(-1)!.push(next());
    } else if (operator === OPS['rectangle']) k += 4;
    else if (operator === OPS['closePath']) paths.at(-1)!.push(paths.at(-1)![0]!);
  }
  return paths;
}

export function extent(points: readonly Point[]): {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly bottom: number;
} {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, bottom] = [Math.min(...xs), Math.min(...ys)];
  return { left, bottom, width: Math.max(...xs) - left, height: Math.max(...ys) - bottom };
}

/** Where a closed line is crossed at a height: least and greatest x. */
export function acrossAt(points: readonly Point[], y: number): readonly [number, number] {
  const xs = points.flatMap(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length]!;
    return ay > y === by > y ? [] : [ax + ((y - ay) / (by - ay)) * (bx - ax)];
  });
  return [Math.min(...xs), Math.max(...xs)];
}
