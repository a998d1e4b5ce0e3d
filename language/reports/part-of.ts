/** Which part of an instrument a path belongs to, for tables that keep a part together. */
import { catalogue } from '../catalogue/catalogue.js';
import type { Wording } from '../wording/wording.js';

/** `top` of `top.thickness`; empty for what belongs to the instrument as a whole, such as `scale`. */
export function partOf(path: string): string {
  if (path.includes('.')) return path.slice(0, path.indexOf('.'));
  return catalogue.part(path) ? path : '';
}

/** What stands after the part: `thickness`; the path itself where that would leave nothing. */
export function withinPart(path: string): string {
  return path.slice(path.indexOf('.') + 1).replaceAll('.', ' ');
}

/** As a heading: `Back bracing`. */
export function partTitle(part: string, wording: Wording): string {
  if (part === '') return wording.text('Instrument');
  const spaced = part.replaceAll('-', ' ');
  return wording.text(spaced.charAt(0).toUpperCase() + spaced.slice(1));
}
