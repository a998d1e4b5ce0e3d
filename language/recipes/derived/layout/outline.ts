/** The outline of the body, asked for by quantities, rules and drawings alike. */
import { boutOutline } from '../../../mechanics/body/bout-outline.js';
import { type Body, bodyWithCutaway } from '../../../mechanics/body/cutaway-outline.js';
import type { Outline } from '../../../mechanics/body/half-widths.js';
import { tracedOutline } from '../../../mechanics/body/traced-outline.js';
import type { Ask } from '../../evaluation/derived-quantity.js';
import type { SharedPart } from '../../evaluation/shared-part.js';

export const BODY: SharedPart<Body> = { key: 'body', make: makeBody };

export function bodyOf(ask: Ask): Body {
  return ask.shared(BODY.key, BODY.make);
}

/** As traced, where it was; otherwise drawn through the widths. */
function makeBody(ask: Ask): Body {
  return withCutaway(ask, tracedOutlineOf(ask) ?? widthsOutline(ask));
}

/** Undefined where nothing was traced. */
export function tracedOutlineOf(ask: Ask): Outline | undefined {
  const value = ask.value('body.outline');
  if (!value) return undefined;
  const items = value.kind === 'list' ? value.items : [value];
  return tracedOutline(
    items.map((item) => {
      if (item.kind !== 'point') return ask.missing('body.outline');
      const numbers = [item.station.quantity, item.offset.quantity];
      if (numbers.some(({ dimension }) => dimension.name !== 'length')) return ask.missing('body.outline');
      return { x: item.station.quantity.si, y: item.offset.quantity.si };
    }),
  );
}

function widthsOutline(ask: Ask): Outline {
  const bout = (name: string) => ({
    width: ask.number(`body.${name}.width`),
    station: ask.number(`body.${name}.station`),
  });
  return boutOutline({
    length: ask.number('body.length'),
    lowerBout: bout('lower-bout'),
    waist: bout('waist'),
    upperBout: bout('upper-bout'),
    tailRadius: ask.numberIf('body.tail-radius'),
    neckRadius: ask.numberIf('body.neck-radius'),
  });
}

function withCutaway(ask: Ask, outline: Outline): Body {
  const depth = ask.numberIf('cutaway.depth');
  if (depth === undefined) return bodyWithCutaway(outline);
  const station = ask.numberIf('cutaway.station');
  const length = station === undefined ? usualHorn(ask) : outline.length - station;
  const kind = ask.word('cutaway.kind') === 'florentine' ? 'florentine' : 'venetian';
  return bodyWithCutaway(outline, { kind, length, depth });
}

function usualHorn(ask: Ask): number {
  ask.assume('the horn of the cutaway is taken to begin 120 mm from the neck end');
  return 0.12;
}
