import type { Disposable } from 'vscode';
import { COMMANDS } from '../../language/server/protocol.js';
import type { Instruments } from '../folder-instruments.js';
import { makerCommand } from './maker-command.js';
import { openComparison } from '../open-comparison.js';
import { pickPair } from '../pick-pair.js';

/** "Compare Two Recipes": asks for what is not given, the recipe at the cursor offered first. */
export function registerCompareRecipes(instruments: Instruments): Disposable {
  return makerCommand(COMMANDS.compareRecipes, async (a?: unknown, b?: unknown) => {
    const pair = typeof a === 'string' && typeof b === 'string' ? { a, b } : await pickPair(instruments);
    if (pair) await openComparison(pair.a, pair.b);
  });
}
