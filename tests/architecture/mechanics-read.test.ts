/** What mechanics gives is read by somebody: a formula that nothing asks for is a promise nobody keeps. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const everyFile = readdirSync('language', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.startsWith('grammar/generated'))
  .map((name) => ({ name: name.replaceAll('\\', '/'), text: readFileSync(join('language', name), 'utf8') }));

/** Exported, and yet read by nothing but the tests that hold it against published figures. None may be added; each goes when it is read. */
const STILL_UNREAD: ReadonlySet<string> = new Set([
  // Beams and plates of textbooks, which the solver is held against.
  'beamFrequency',
  'cantileverEndLoad',
  'clampedBeamCentreLoad',
  'simpleBeamCentreLoad',
  'simpleBeamThirdPoints',
  'simpleBeamUniform',
  'hingedFrequency',
  'hingedPointDeflection',
  'hingedUniformDeflection',
  'CANTILEVER_ROOTS',
  'bendingStress',
  // Energies and limits that property tests state.
  'powerBalance',
  'weakDecay',
  'pistonFrequency',
  'propagate',
  // Climate, added mass and single braces: nothing of the recipe asks for them yet.
  'climateChange',
  'domeRiseChange',
  'swellingCurvature',
  'effectiveMassFromAddedMass',
  'withAddedMass',
  'monopoleMobility',
  'braceShareAt',
  'braceStiffnessAt',
  'halfLapStiffness',
  'movementCoefficient',
  'shrinkageTo',
  'thicknessForBending',
  'shearShareOfDeflection',
  'alongFromMixedMode',
  'alongFromSecondBending',
  'handbookElasticity',
  'elasticityFromTaps',
  'TWIST_TAP_SCATTER',
  'INTERSECTION_MOISTURE',
  'stringPitch',
  'pitchFrequency',
  'scaleFromFret',
  'fretPlaces',
  'roundHole',
  'outlineArea',
  'outlinePerimeter',
  'STRING_KINDS',
]);

test('every function, constant and class that mechanics exports is read, or named here as still unread', () => {
  const unread = everyFile
    .filter(({ name }) => /^mechanics\/(?!plate|top|linear-algebra)/.test(name) && !name.endsWith('index.ts'))
    .flatMap(({ name, text }) =>
      [...text.matchAll(/^export (?:async )?(?:function|const|class) (\w+)/gm)]
        .map(([, exported = '']) => exported)
        .filter((exported) => !isRead(exported, name, text)),
    );
  expect(unread.filter((name) => !STILL_UNREAD.has(name))).toEqual([]);
  expect([...STILL_UNREAD].filter((name) => !unread.includes(name))).toEqual([]);
});

/** By another file that is no list of exports, or within its own. */
function isRead(exported: string, own: string, text: string): boolean {
  const word = new RegExp(`\\b${exported}\\b`, 'g');
  if ((text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '').match(word)?.length ?? 0) > 1) return true;
  return everyFile.some(
    (file) => file.name !== own && !file.name.endsWith('index.ts') && file.text.match(word) !== null,
  );
}
