/** What all builds of the example shop's model say together, as it is printed, kept as a file. Without the solver. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { modelEffectsAsText } from '../../language/cli/text/model-effects-text.js';
import { styleFor } from '../../language/cli/text/style.js';
import { modelEffectsTable } from '../../language/reports/effects/model-effects-table.js';
import { modelEffects } from '../../language/recipes/builds/model-effects.js';
import { ENGLISH } from '../../language/wording/wording.js';
import { deskOf } from '../editing/desk-of.js';

const FOLDER = 'examples/hollin-reach';
const { workshop } = deskOf(...readdirSync(FOLDER).map((name) => readFileSync(join(FOLDER, name), 'utf8')));
const style = styleFor({ colour: false, columns: 100, wording: ENGLISH, ink: '' });

it('tells of twelve Vennicks what can be told apart, and what to change next', async () => {
  const text = modelEffectsAsText(modelEffectsTable(workshop, 'vennick')!, ENGLISH, style);
  await expect(text).toMatchFileSnapshot('all-builds/vennick.txt');
});

it('agrees with plain differences where one build stands against builds alike', () => {
  // No. 39 differs from No. 38 by its back alone but for 0.02 mm of top: 235 Hz against 218 Hz on the first day.
  const { design, responses } = modelEffects(workshop, 'vennick')!;
  const back = responses.find(({ response }) => response.path === 'resonance.back')!;
  if (back.outcome.kind !== 'fitted') throw new Error(back.outcome.kind);
  const { builds } = back.outcome.effects.find(({ variables }) => variables[0]!.paths[0] === 'back.thickness')!;
  expect(design.builds).toHaveLength(12);
  expect(Math.abs(builds!.amount - (235 - 218))).toBeLessThan(3);
});
