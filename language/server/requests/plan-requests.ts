/** Requests for the plan: as marks for a page, and as a file to save. */
import { type PlanFiles, planFile, type PlanFileAsked, planParts } from '../../reports/plan/plan-file.js';
import { planPicture } from '../../reports/plan/plan-picture.js';
import { GetPlan, GetPlanFile, ListPlanParts, type PlanPart, type PlanPicture, type SavedPlan } from '../protocol.js';
import { english } from '../../wording/wording.js';
import { inFull } from '../answering.js';
import type { Serving } from '../serving.js';

export function servePlans(
  { connection, session, answerOrSay }: Serving,
  load: (() => Promise<PlanFiles>) | undefined,
): void {
  const { desk } = session;
  connection.onRequest(
    GetPlan,
    answerOrSay<{ readonly name: string }, PlanPicture | null>(null, ({ name }) => planPicture(desk, name) ?? null),
  );
  const parts = answerOrSay<undefined, readonly PlanPart[]>([], () => planParts(desk.workshop));
  connection.onRequest(ListPlanParts, (token) => parts(undefined, token));
  const nothing: SavedPlan = { trouble: desk.workshop.wording.text(english('The drawing could not be made.')) };
  connection.onRequest(
    GetPlanFile,
    answerOrSay<PlanFileAsked, SavedPlan | Promise<SavedPlan>>(nothing, async (asked) => {
      try {
        const made = await planFile(desk.workshop, asked, load);
        return 'trouble' in made ? made : { fileName: made.fileName, base64: inBase64(made.bytes) };
      } catch (fault) {
        connection.console.error(inFull(fault));
        return nothing;
      }
    }),
  );
}

function inBase64(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
}
