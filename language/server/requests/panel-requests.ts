/** Requests for what stands beside the text: lineage, choice of wood, drawing, modes, tests, a shop to start from. */
import { comparedModes } from '../../reports/comparison/compared-modes.js';
import { drawingOf } from '../../reports/plan/drawing.js';
import { expectationTests } from '../../reports/expectation-results.js';
import { lineageOverview } from '../../reports/lineage-overview.js';
import { modeShapes } from '../../reports/plan/mode-shapes.js';
import { type StarterAnswers, type StarterFile, starterShop } from '../../editing/starter/starter-shop.js';
import { useWood } from '../../editing/refactoring/use-wood.js';
import { woodChoice } from '../../reports/wood-choice.js';
import { placed, toWorkspaceEdit } from '../convert.js';
import {
  type ComparedModes,
  type Drawing,
  GetComparedModes,
  GetDrawing,
  GetModeShapes,
  GetStarterShop,
  GetWoodChoice,
  GetWoodUse,
  type LineageEntry,
  ListExpectations,
  ListLineage,
  type ModeShapes,
  type RecipeTests,
  type WoodChoice,
  type WoodUse,
} from '../protocol.js';
import type { Serving } from '../serving.js';

export function servePanels({ connection, session, versionOf, answerOrSay }: Serving): void {
  const { desk } = session;

  const lineage = answerOrSay<undefined, readonly LineageEntry[]>([], () => lineageOverview(desk));
  connection.onRequest(ListLineage, (token) => lineage(undefined, token));
  const expectations = answerOrSay<undefined, readonly RecipeTests[]>([], () => expectationTests(desk));
  connection.onRequest(ListExpectations, (token) => expectations(undefined, token));
  connection.onRequest(
    GetWoodChoice,
    answerOrSay<{ readonly recipe: string }, WoodChoice | null>(null, ({ recipe }) => woodChoice(desk, recipe) ?? null),
  );
  connection.onRequest(
    GetWoodUse,
    answerOrSay<{ readonly recipe: string; readonly wood: string }, WoodUse | null>(null, ({ recipe, wood }) => {
      const use = useWood(desk, recipe, wood);
      if (!use) return null;
      return { edit: toWorkspaceEdit(placed(desk, use.edits), versionOf), thicknessLeft: use.thicknessLeft };
    }),
  );
  connection.onRequest(
    GetDrawing,
    answerOrSay<{ readonly name: string }, Drawing | null>(null, ({ name }) => drawingOf(desk, name) ?? null),
  );
  connection.onRequest(
    GetModeShapes,
    answerOrSay<{ readonly name: string; readonly plate: 'top' | 'back' }, ModeShapes | null>(
      null,
      ({ name, plate }) => modeShapes(desk, name, plate) ?? null,
    ),
  );
  connection.onRequest(
    GetComparedModes,
    answerOrSay<{ readonly a: string; readonly b: string; readonly plate: 'top' | 'back' }, ComparedModes | null>(
      null,
      ({ a, b, plate }) => comparedModes(desk, a, b, plate) ?? null,
    ),
  );
  connection.onRequest(
    GetStarterShop,
    answerOrSay<StarterAnswers, readonly StarterFile[]>([], (answers) => starterShop(answers, session.parser)),
  );
}
