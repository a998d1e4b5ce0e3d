/** A mode, and what stands in the way of one, in words: the same wherever modes are drawn. */
import type { DrawnMode, ModeShapes } from '../../../../language/server/protocol.js';
import type { ModeWords } from '../../mode-messages.js';
import { fill } from '../page.js';

/** As one, side against side, end against end, or in so many areas; and whether it is the one that is heard most. */
export function movementOf({ areas, main }: DrawnMode, words: ModeWords): string {
  return main ? `${wayOf(areas, words)}; ${words.mainMode}` : wayOf(areas, words);
}

function wayOf(areas: DrawnMode['areas'], words: ModeWords): string {
  const [one, other] = areas;
  if (!one || !other) return words.asOne;
  if (areas.length > 2) return fill(words.areas, areas.length);
  const along = Math.abs(one.middle[0] - other.middle[0]);
  const across = Math.abs(one.middle[1] - other.middle[1]);
  return across > along ? words.beside : words.behind;
}

/** Why there is nothing to draw; undefined where there is. */
export function whyNoModes({ state, missing, trouble }: ModeShapes, words: ModeWords): string | undefined {
  if (state === 'waiting') return words.modesWaiting;
  if (state === 'known') return undefined;
  return missing.length > 0 ? fill(words.modesMissing, missing.join(', ')) : fill(words.modesTrouble, trouble ?? '');
}

/** What the model leaves out. */
export function modesCaution({ edge }: ModeShapes, words: ModeWords): string {
  return edge === 'rim' ? words.modesCautionRim : words.modesCautionHinged;
}
