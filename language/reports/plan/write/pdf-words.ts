/** What stands below a picture on each sheet of a PDF. */
import type { Wording } from '../../../wording/wording.js';
import type { PdfWords } from './pdf.js';
import { CHECK_BAR } from './tiles.js';

export function pdfWords(title: string, shop: string, { say }: Wording): PdfWords {
  return {
    title,
    shop,
    sheet: (tile, rows, columns) => say`Sheet ${tile} of ${rows} × ${columns}`,
    bar: say`This bar is ${CHECK_BAR} mm long. If it is not, print again without fitting to the page.`,
  };
}
