/** A picture as part of a page, so many millimetres wide on paper: lines and figures keep their size whatever the scale. */
import { boxOfPicture, type Picture } from './picture.js';
import { svgOf } from './svg.js';

/** The scale at which a picture of this size fits into a frame, mm. */
export function scaleFor(picture: Picture, width: number, height: number): number {
  const { left, right, bottom, top } = boxOfPicture(picture);
  return Math.min(width / (right - left + 10), height / (top - bottom + 10), 1);
}

/** Markup without a prologue; `label` for those who do not see it. */
export function inlineSvg(picture: Picture, scale: number): string {
  return svgOf(picture, { scale, fine: 0.6 })
    .replace(/^<\?xml[^\n]*\n/, '')
    .replace('<svg ', '<svg role="img" ')
    .trim();
}
