import { l10n, window } from 'vscode';
import type { Instruments } from './folder-instruments.js';
import { pickInstrument } from './pick-instrument.js';

/** Ask for two instruments, the one at the cursor and its parent offered first. `undefined` when the maker thinks better of it. */
export async function pickPair(
  instruments: Instruments,
): Promise<{ readonly a: string; readonly b: string } | undefined> {
  const all = await instruments.all();
  const here = await instruments.atCursor(window.activeTextEditor);
  const one = await pickInstrument(
    all,
    l10n.t('Which instrument?'),
    all.find(({ name }) => name === here?.name),
  );
  if (!one) return undefined;
  const rest = all.filter(({ name }) => name !== one.name);
  const parent = rest.find(({ name }) => name === one.parent);
  const other = await pickInstrument(rest, l10n.t('Beside which other?'), parent);
  if (!other) return undefined;
  // The parent reads best on the left, where the eye expects what was there before.
  return other.name === one.parent ? { a: other.name, b: one.name } : { a: one.name, b: other.name };
}
