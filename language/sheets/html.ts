/** A sheet as a document that needs nothing but itself: no script, nothing from elsewhere, every text escaped. */
import styles from './sheet.css?raw';
import { visible } from '../wording/visible.js';
import type { Sheet, SheetBox, SheetCell, SheetSection } from './sheet.js';

export function sheetAsHtml(sheet: Sheet): string {
  const { title, shop, intro, boxes, sections, cautions, closing, language } = sheet;
  return `<!DOCTYPE html>
<html lang="${escaped(language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src 'self' file:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>
${styles}</style>
</head>
<body>
<main class="sheet">
<header>
${tag('p', 'shop', shop)}
<h1>${escaped(title)}</h1>
${intro.map((sentence) => tag('p', '', sentence)).join('\n')}
${boxesAsHtml(boxes)}
</header>
${sections.map(sectionAsHtml).join('\n')}
${cautionsAsHtml(cautions, closing)}
</main>
</body>
</html>
`;
}

/** Text as it may stand between tags and in quoted attributes. */
export function escaped(text: string): string {
  return visible(text).replace(/[&<>"'#]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

function tag(name: string, kind: string, text: string): string {
  return text === '' ? '' : `<${name}${kind === '' ? '' : ` class="${kind}"`}>${escaped(text)}</${name}>`;
}

/** Rows that are never parted. */
const WHOLE = 12;

function sectionAsHtml(section: SheetSection): string {
  const { title, text = [], figure, columns, rows, boxes = [], ownPage, photo, photos = [] } = section;
  // A short table stays on one page.
  const kinds = [
    ...(ownPage ? ['page'] : []),
    ...(photo !== undefined || (rows && rows.length <= WHOLE && !figure) ? ['whole'] : []),
  ];
  return `<section${kinds.length > 0 ? ` class="${kinds.join(' ')}"` : ''}>
<div class="head">
<h2>${escaped(title)}</h2>
${text.map((sentence) => tag('p', '', sentence)).join('\n')}
${figure === undefined ? '' : `<div class="drawing">${figure}</div>`}
</div>
${rows && rows.length > 0 ? tableAsHtml(columns, rows) : ''}
${boxesAsHtml(boxes)}
${photo === undefined ? '' : `<div class="photo"><span>${escaped(photo)}</span></div>`}
${photos.map(photoAsHtml).join('\n')}
</section>`;
}

function photoAsHtml({ address, caption }: NonNullable<SheetSection['photos']>[number]): string {
  return `<figure class="print"><img src="${escaped(encodeURI(address))}" alt="${escaped(caption)}"><figcaption>${escaped(caption)}</figcaption></figure>`;
}

function tableAsHtml(columns: readonly string[] | undefined, rows: readonly (readonly SheetCell[])[]): string {
  const head = columns
    ? `<thead><tr>${columns.map((column) => `<th scope="col">${escaped(column)}</th>`).join('')}</tr></thead>`
    : '';
  const body = rows.map(([first = '', ...rest], i) => {
    const cells = rest.map(cellAsHtml).join('');
    // Named once, the head of the rows above is that of this one too.
    if (first === '' && i > 0) return `<tr>${cells}</tr>`;
    // A box to write in heads no row.
    if (isBox(first)) return `<tr>${cellAsHtml(first)}${cells}</tr>`;
    const further = rows.slice(i + 1).findIndex(([next]) => next !== '');
    const rowspan = 1 + (further < 0 ? rows.length - i - 1 : further);
    const over = rowspan > 1 ? ` rowspan="${rowspan}"` : '';
    const kind = typeof first === 'string' && isFigure(first) ? ' class="figure"' : '';
    const head = first === '' ? `<td${over}></td>` : `<th scope="row"${kind}${over}>${contentOf(first)}</th>`;
    return `<tr>${head}${cells}</tr>`;
  });
  return `<table>${head}<tbody>\n${body.join('\n')}\n</tbody></table>`;
}

function cellAsHtml(cell: SheetCell): string {
  if (isBox(cell)) return '<td class="write"></td>';
  const text = typeof cell === 'string' ? cell : cell.strong;
  return `<td${isFigure(text) ? ' class="figure"' : ''}>${contentOf(cell)}</td>`;
}

function contentOf(cell: SheetCell): string {
  if (typeof cell === 'string') return escaped(cell);
  return isBox(cell) ? '' : `<strong>${escaped(cell.strong)}</strong>`;
}

function isBox(cell: SheetCell): cell is { readonly write: true } {
  return typeof cell !== 'string' && 'write' in cell;
}

/** A figure with its unit, short enough to stay in one line. */
function isFigure(text: string): boolean {
  return text.length <= 24 && /^[±−+-]?\d/.test(text);
}

function boxesAsHtml(boxes: readonly SheetBox[]): string {
  if (boxes.length === 0) return '';
  const all = boxes.map((box) => {
    const { label, value } = typeof box === 'string' ? { label: box, value: '' } : box;
    return `<div><dt>${escaped(label)}</dt><dd>${escaped(value)}</dd></div>`;
  });
  return `<dl class="boxes">${all.join('')}</dl>`;
}

function cautionsAsHtml(cautions: Sheet['cautions'], closing: string): string {
  const items = cautions.map(({ text, source }) => `<li>${escaped(text)} <cite>${escaped(source)}</cite></li>`);
  const list = items.length === 0 ? '' : `<ul>\n${items.join('\n')}\n</ul>`;
  return `<footer>\n${list}\n${tag('p', '', closing)}\n</footer>`;
}
