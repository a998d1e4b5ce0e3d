import { type Disposable, l10n, window } from 'vscode';
import { COMMANDS } from '../../language/server/protocol.js';
import type { Instruments } from '../instruments.js';
import { makerCommand } from './maker-command.js';
import { openComparison } from '../open-comparison.js';
import { pickInstrument } from '../pick-instrument.js';

/** "Compare Two Recipes": asks for what is not given, the recipe at the cursor offered first. */
export function registerCompareRecipes(instruments: Instruments): Disposable {
  return makerCommand(COMMANDS.compareRecipes, async (a?: unknown, b?: unknown) => {
    const [one, other] = typeof a === 'string' && typeof b === 'string' ? [a, b] : await ask(instruments);
    if (one !== undefined && other !== undefined) await openComparison(one, other);
  });
}

async function ask(instruments: Instruments): Promise<readonly [string?, string?]> {
  const all = await instruments.all();
  const here = await instruments.atCursor(window.activeTextEditor);
  const one = await pickInstrument(
    all,
    l10n.t('Which instrument?'),
    all.find(({ name }) => name === here?.name),
  );
  if (!one) return [];
  const rest = all.filter(({ name }) => name !== one.name);
  const parent = rest.find(({ name }) => name === one.parent);
  const other = await pickInstrument(rest, l10n.t('Beside which other?'), parent);
  // The parent reads best on the left, where the eye expects what was there before.
  return other && other.name === one.parent ? [other.name, one.name] : [one.name, other?.name];
}
