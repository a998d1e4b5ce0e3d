/** Cautions in a hover: each once, however often it falls due, with its source. */
import type { Caution } from '../catalogue/cautions.js';
import { plain } from './markdown.js';

export function cautionLines(cautions: readonly Caution[], said = ''): string | undefined {
  const once = [...new Map(cautions.map((caution) => [caution.key, caution])).values()];
  if (once.length === 0) return undefined;
  return once.map(({ text, source }) => `**Caution.** ${said}${plain(text)} (${plain(source)})`).join('\n\n');
}
