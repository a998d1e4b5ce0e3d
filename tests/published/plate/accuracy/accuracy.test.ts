/**
 * Writes every comparison of the top solver with outside numbers into `language/mechanics/plate/accuracy.md`, and fails when what is
 * there is no longer what comes out. After a change that was meant:
 *
 *   npx vitest run tests/published/plate/accuracy -u
 */
import { resolve } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { expect, test } from 'vitest';
import { halfPlateSection, loadSection, panelSection, sprucePlateSection, theorySection } from './bare-plates.js';
import { THOROUGH } from '../../../thorough.js';
import { rotationSection, shellSection, solidSection } from './braced-tops.js';

const FILE = resolve('language/mechanics/plate/accuracy.md');

test.runIf(THOROUGH)('the table of accuracy is what comes out', { timeout: 900_000 }, async () => {
  const text = `
# How near the top solver comes

Made by \`tests/published/plate/accuracy/accuracy.test.ts\`, which fails when this is out of date; do not edit. Differences are ours
against the source. What each source is, and which numbers were seen and which are from memory, is told beside the numbers
in \`tests/published/\`.

## Bare plates, thin theory

Circular plates and squares as ω L² √(m/D), the rest as told.

${theorySection()}

## Plates under load

Deflection of the middle, w D/(q a⁴) under even pressure and w D/(P a²) under a single force. Source: Timoshenko &
Woinowsky-Krieger, and Roark.

${loadSection()}

## A clamped square panel milled with one rib

Source: the theory of M.D. Olson & C.R. Hazell, J. Sound Vib. 50 (1977), as reprinted later.

${panelSection()}

## Twenty free plates of guitar spruce in three-dimensional finite elements

Source: the data set of D.G. Badiane and others; modes named by their nodal lines, along the grain and across.

${sprucePlateSection()}

## Five measured half-plates of guitar spruce

Source: the same authors' recordings and their own constants. The two lowest peaks of plate 3L contradict its others, see the remarks in
\`tests/published/data/spruce-plates-taps.json\`.

${halfPlateSection()}

## Guitar tops in CalculiX, quadratic shells and solids

Modes in order.

${shellSection()}

Rotation of the bridge:

${rotationSection()}

## Six braced tops of our own in CalculiX, solid elements

Modes matched by shape; limits over three meshes of the solid elements, good to 0.1 to 0.7 %. See \`tests/published/plate/solid/solve.ts\`.

${solidSection()}
`;
  const config = await resolveConfig(FILE);
  await expect(await format(text, { ...config, filepath: FILE })).toMatchFileSnapshot(FILE);
});
