/** The outline of the body, asked for by quantities, rules and drawings alike. */
import { boutOutline } from '../../../mechanics/body/bout-outline.js';
import { type Body, bodyWithCutaway } from '../../../mechanics/body/cutaway-outline.js';
import type { Ask } from '../../evaluation/derived-quantity.js';
import type { SharedPart } from '../../evaluation/shared-part.js';

export const BODY: SharedPart<Body> = { key: 'body', make: makeBody };

export function bodyOf(ask: Ask): Body {
  return ask.shared(BODY.key, BODY.make);
}

function makeBody(ask: Ask): Body {
  const bout = (name: string) => ({
    width: ask.number(`body.${name}.width`),
    station: ask.number(`body.${name}.station`),
  });
  const outline = boutOutline({
    length: ask.number('body.length'),
    lowerBout: bout('lower-bout'),
    waist: bout('waist'),
    upperBout: bout('upper-bout'),
    tailRadius: ask.numberIf('body.tail-radius'),
    neckRadius: ask.numberIf('body.neck-radius'),
  });
  const depth = ask.numberIf('cutaway.depth');
  if (depth === undefined) return bodyWithCutaway(outline);
  const station = ask.numberIf('cutaway.station');
  const length = station === undefined ? usualHorn(ask) : ask.number('body.length') - station;
  const kind = ask.word('cutaway.kind') === 'florentine' ? 'florentine' : 'venetian';
  return bodyWithCutaway(outline, { kind, length, depth });
}

function usualHorn(ask: Ask): number {
  ask.assume('the horn of the cutaway is taken to begin 120 mm from the neck end');
  return 0.12;
}
