/** Pictures as PDF at full size, each tiled over sheets of paper with crop marks, names of the sheets and a bar to check by. */
import {
  clip,
  endPath,
  LineCapStyle,
  PDFDocument,
  type PDFFont,
  type PDFPage,
  degrees,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  rgb,
  StandardFonts,
} from 'pdf-lib';
import type { Label, Point, Shape } from '../plan.js';
import { LINE_LOOKS } from './line-looks.js';
import { boxOfPicture, type Picture } from './picture.js';
import { pathData } from './svg.js';
import { CHECK_BAR, EDGE, type Paper, type Tile, type Tiling, tilingOf } from './tiles.js';

/** Points of a PDF in a millimetre. */
const PT = 72 / 25.4;

export interface PdfWords {
  readonly title: string;
  readonly shop: string;
  /** `Sheet {0} of {1} × {2}` with its three places filled. */
  readonly sheet: (tile: string, rows: number, columns: number) => string;
  /** Under the bar: what it must measure. */
  readonly bar: string;
}

/** `made`: when, so that the same plan gives the same file. */
export async function pdfOf(
  pictures: readonly Picture[],
  paper: Paper,
  words: PdfWords,
  made: Date,
): Promise<Uint8Array> {
  const file = await PDFDocument.create();
  file.setTitle(words.title);
  file.setAuthor(words.shop);
  file.setCreationDate(made);
  file.setModificationDate(made);
  const font = await file.embedFont(StandardFonts.Helvetica);
  for (const picture of pictures) {
    const tiling = tilingOf(boxOfPicture(picture), paper);
    for (const tile of tiling.tiles) {
      const page = file.addPage([tiling.paper.width * PT, tiling.paper.height * PT]);
      drawTile(page, picture, tiling, tile, font);
      drawMarks(page, tiling);
      drawFoot(page, picture, { ...tiling, name: tile.name }, font, words);
    }
  }
  return file.save();
}

function drawTile(page: PDFPage, picture: Picture, { frame }: Tiling, { corner }: Tile, font: PDFFont): void {
  const [width, height] = [frame.right - frame.left, frame.top - frame.bottom];
  const place = ([x, y]: Point): Point => [(x - corner[0] + frame.left) * PT, (y - corner[1] + frame.bottom) * PT];
  page.pushOperators(
    pushGraphicsState(),
    rectangle(frame.left * PT, frame.bottom * PT, width * PT, height * PT),
    clip(),
    endPath(),
  );
  for (const shape of picture.shapes) drawShape(page, shape, place);
  for (const label of picture.labels) drawLabel(page, label, place, font);
  page.pushOperators(popGraphicsState());
}

function drawShape(page: PDFPage, shape: Shape, place: (p: Point) => Point): void {
  const { width, dashes } = LINE_LOOKS[shape.line];
  const look = {
    borderWidth: width * PT,
    borderColor: BLACK,
    ...(dashes.length > 0 ? { borderDashArray: dashes.map((length) => length * PT) } : {}),
    borderLineCap: LineCapStyle.Butt,
  };
  if (shape.kind === 'circle' || shape.kind === 'ellipse') {
    const [x, y] = place(shape.centre);
    const [rx, ry] = shape.kind === 'circle' ? [shape.radius, shape.radius] : shape.half;
    page.drawEllipse({ x, y, xScale: rx * PT, yScale: ry * PT, ...look });
    return;
  }
  // A path of SVG runs downwards; put at the origin of the page it is turned over again.
  page.drawSvgPath(
    pathData(shape, (p) => {
      const [x, y] = place(p);
      return [x, -y];
    }),
    { x: 0, y: 0, ...look },
  );
}

function drawLabel(
  page: PDFPage,
  { at, text, height, anchor, turned = 0 }: Label,
  place: (p: Point) => Point,
  font: PDFFont,
): void {
  const said = inFont(text, font);
  const size = (height / CAP) * PT;
  const width = font.widthOfTextAtSize(said, size);
  const back = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const angle = (turned * Math.PI) / 180;
  const [x, y] = place(at);
  page.drawText(said, {
    x: x - back * Math.cos(angle),
    y: y - back * Math.sin(angle),
    size,
    font,
    rotate: degrees(turned),
    color: BLACK,
  });
}

/** Where to cut, outside the frame. */
function drawMarks(page: PDFPage, { frame }: Tiling): void {
  const stroke = (a: Point, b: Point) =>
    page.drawLine({
      start: { x: a[0] * PT, y: a[1] * PT },
      end: { x: b[0] * PT, y: b[1] * PT },
      thickness: 0.25 * PT,
      color: BLACK,
    });
  const long = EDGE * 0.6;
  for (const x of [frame.left, frame.right]) {
    for (const [y, away] of [
      [frame.bottom, -1],
      [frame.top, 1],
    ] as const) {
      stroke([x, y + away], [x, y + away * (1 + long)]);
      const side = x === frame.left ? -1 : 1;
      stroke([x + side, y], [x + side * (1 + long), y]);
    }
  }
}

function drawFoot(
  page: PDFPage,
  picture: Picture,
  { frame, rows, columns, name }: Tiling & Pick<Tile, 'name'>,
  font: PDFFont,
  words: PdfWords,
): void {
  const base = frame.bottom - 8;
  const write = (text: string, x: number, y: number, size = 7) =>
    page.drawText(inFont(text, font), { x: x * PT, y: y * PT, size, font, color: BLACK });
  const left = frame.left + 8;
  write(words.sheet(name, rows, columns), left + CHECK_BAR + 6, base + 2.2, 9);
  write(
    [words.shop, words.title, picture.title].filter((each) => each !== '').join(' · '),
    left + CHECK_BAR + 6,
    base - 1.6,
  );
  const bar = (x: number, y: number, to: number, toY: number) =>
    page.drawLine({
      start: { x: x * PT, y: y * PT },
      end: { x: to * PT, y: toY * PT },
      thickness: 0.25 * PT,
      color: BLACK,
    });
  bar(left, base, left + CHECK_BAR, base);
  for (let at = 0; at <= CHECK_BAR; at += 10) bar(left + at, base, left + at, base + (at % 50 === 0 ? 3 : 2));
  write(words.bar, left, base - 3);
}

const BLACK = rgb(0, 0, 0);
/** Figures of Helvetica are 0.72 of its size. */
const CAP = 0.72;

/** What is written otherwise, rather than lost, where the standard font does not have it. */
const OTHERWISE: ReadonlyMap<string, string> = new Map([
  ['→', '->'],
  ['−', '-'],
  ['′', "'"],
  ['″', '"'],
  ['≈', '~'],
]);

function inFont(text: string, font: PDFFont): string {
  const known = new Set(font.getCharacterSet());
  return Array.from(text, (sign) => (known.has(sign.codePointAt(0)!) ? sign : (OTHERWISE.get(sign) ?? '?'))).join('');
}
