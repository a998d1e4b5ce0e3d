/** Requests for what stands beside the text: the lineage, the choice of wood, the drawing, the modes. */
import { drawingOf } from '../editing/drawing.js';
import { lineageOverview } from '../editing/lineage-overview.js';
import { modeShapes } from '../editing/mode-shapes.js';
import { useWood } from '../editing/use-wood.js';
import { woodChoice } from '../editing/wood-choice.js';
import { placed, toWorkspaceEdit } from './convert.js';
import {
  type Drawing,
  GetDrawing,
  GetModeShapes,
  GetWoodChoice,
  GetWoodUse,
  type LineageEntry,
  ListLineage,
  type ModeShapes,
  type WoodChoice,
  type WoodUse,
} from './protocol.js';
import type { Serving } from './serve.js';

export function serveBesideTheText({ connection, session, versionOf, answer }: Serving): void {
  const { desk } = session;

  const lineage = answer<undefined, readonly LineageEntry[]>([], () => lineageOverview(desk));
  connection.onRequest(ListLineage, (token) => lineage(undefined, token));
  connection.onRequest(
    GetWoodChoice,
    answer<{ readonly recipe: string }, WoodChoice | null>(null, ({ recipe }) => woodChoice(desk, recipe) ?? null),
  );
  connection.onRequest(
    GetWoodUse,
    answer<{ readonly recipe: string; readonly wood: string }, WoodUse | null>(null, ({ recipe, wood }) => {
      const use = useWood(desk, recipe, wood);
      if (!use) return null;
      return { edit: toWorkspaceEdit(placed(desk, use.edits), versionOf), thicknessLeft: use.thicknessLeft };
    }),
  );
  connection.onRequest(
    GetDrawing,
    answer<{ readonly name: string }, Drawing | null>(null, ({ name }) => drawingOf(desk, name) ?? null),
  );
  connection.onRequest(
    GetModeShapes,
    answer<{ readonly name: string; readonly plate: 'top' | 'back' }, ModeShapes | null>(
      null,
      ({ name, plate }) => modeShapes(desk, name, plate) ?? null,
    ),
  );
}
