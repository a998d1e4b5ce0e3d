/** Cautions in a hover: each once, however often it falls due, with its source. */
import type { Caution } from '../../catalogue/cautions.js';
import { plain } from '../markdown.js';
import { cited } from '../../wording/cited.js';
import { type Wording } from '../../wording/wording.js';

export function cautionLines(cautions: readonly Caution[], wording: Wording, said = ''): string | undefined {
  const lead = `**${wording.text('Caution.')}**`;
  const once = [...new Map(cautions.map((caution) => [caution.key, caution])).values()];
  if (once.length === 0) return undefined;
  return once
    .map(({ text, source }) => `${lead} ${said}${plain(wording.text(text))} (${plain(cited(source, wording))})`)
    .join('\n\n');
}
