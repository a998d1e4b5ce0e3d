/** One effect in words: what is computed, what the builds say, what both say together, and what to make of it. */
import type { Dimension } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Interval, ToldEffect } from '../../recipes/builds/response-effects.js';
import type { NextFor } from '../../recipes/builds/next-for.js';
import { sentences, type Wording } from '../../wording/wording.js';

/** How a kind of reading is written. */
export interface Unit {
  readonly dimension: Dimension;
  readonly symbol: string;
}

/** `+2.1 ± 0.8 Hz` */
export function writeInterval({ amount, band }: Interval, { dimension, symbol }: Unit): string {
  const written = writeQuantity(amount, dimension, { unit: symbol, uncertainty: band, difference: true });
  return written.replace(/^-/, '−');
}

/** `bridge.mass 22 g: computed +2.1 Hz ± 0.8; your builds say +3.7 ± 4.1; together +2.3 ± 0.9 Hz.` */
export function effectSentence(what: string, effect: ToldEffect, unit: Unit, wording: Wording): string {
  const { say, text } = wording;
  const { computed, builds, together } = effect;
  const write = (interval: Interval) => writeInterval(interval, unit);
  const known = [
    ...(computed ? [say`computed ${write(computed)}`] : []),
    ...(builds ? [say`your builds say ${write(builds)}`] : []),
    ...(computed && builds && together && effect.verdict !== 'disagrees' ? [say`together ${write(together)}`] : []),
  ];
  if (known.length === 0) return say`${what}: neither computed nor to be told from these builds.`;
  const told = `${what}: ${known.join('; ')}.`;
  return sentences(told, ...said(effect, text));
}

function said(effect: ToldEffect, text: Wording['text']): readonly string[] {
  const { verdict, computed, builds, share } = effect;
  if (verdict === 'disagrees') {
    return [text('Builds and mechanics cannot both be right, so they are not averaged: look into this first.')];
  }
  if (!builds && computed) return [text('These builds add nothing by themselves: they cannot tell it from others.')];
  if (share !== undefined && share < 0.1) return [text('Nearly all of it is mechanics; the builds add little yet.')];
  return [];
}

export function verdictInWords({ verdict }: ToldEffect, { text }: Wording): string {
  switch (verdict) {
    case 'disagrees':
      return text('builds and mechanics disagree');
    case 'builds':
      return text('stands out');
    case 'together':
      return text('told with mechanics');
    case 'hidden':
      return text('not distinguishable');
  }
}

/** What it takes to tell an effect of the size that matters. */
export function nextSentence(next: NextFor | undefined, { say, text }: Wording): string | undefined {
  if (!next) return undefined;
  const { best, repeats, replicates, reworks } = next;
  switch (best) {
    case 'told':
      return text('Builds alone can tell an effect of this size already.');
    case 'reworks':
      return reworks === 1
        ? text(
            'To tell it from builds alone, one instrument read before and after would do: the instrument is its own control.',
          )
        : say`To tell it from builds alone, ${reworks ?? 0} instruments read before and after would do: each is its own control.`;
    case 'repeats':
      return repeats === 1
        ? text('To tell it from builds alone takes one more instrument with this change.')
        : say`To tell it from builds alone takes ${repeats ?? 0} more instruments with this change.`;
    case 'replicates':
      return replicates === 1
        ? text(
            'To tell it from builds alone takes one more instrument without this change: a replicate is what is missing.',
          )
        : say`To tell it from builds alone takes ${replicates ?? 0} more instruments without this change: replicates are what is missing.`;
    default:
      return text(
        'Not even thirty more instruments would tell it from builds alone: it is smaller than what they scatter.',
      );
  }
}
