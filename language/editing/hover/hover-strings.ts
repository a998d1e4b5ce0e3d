/** Hover on the line that says which strings an instrument wears: each string as the body hears it. */
import { shown } from '../../checks/phrases.js';
import { noteName, wolfSentences } from '../../checks/voice/wolf-words.js';
import { mobilityUnder } from '../../mechanics/voice/index.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import { heardOf } from '../../recipes/derived/voice-board.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Subject } from '../../reports/subject.js';
import type { Wording } from '../../wording/wording.js';
import { bullets, paragraphs, plain, table } from '../markdown.js';

/** Undefined while or where nothing can be told of them. */
export function stringsHover({ evaluation }: Subject, wording: Wording): string | undefined {
  const heard = evaluation && heardOf(evaluation);
  if (!heard) return undefined;
  const { text, say } = wording;
  const { strings } = heard.board;
  const rows = strings.map(({ pitch }, s) => [
    noteName(pitch),
    figure(evaluation, `strings.${s + 1}.tension`),
    figure(evaluation, `strings.${s + 1}.loudness`),
    figure(evaluation, `strings.${s + 1}.sustain`),
    writeQuantity(mobilityUnder(heard.board, s), DIMENSION.mobility, { unit: 's/kg', digits: 2 }),
  ]);
  const head = [text('string'), text('tension'), text('loudness'), text('sustain'), text('mobility at the saddle')];
  return paragraphs(
    table(head, rows),
    bullets(wolfSentences(heard, wording).map(plain)),
    say`Of one pluck on every note up to 400 Hz; the mobility is the greatest below it.`,
  );
}

function figure(evaluation: Evaluation, path: string): string {
  const derived = evaluation.derived(path);
  return derived?.known ? shown(derived.si, derived.quantity, evaluation.uncertainty(path)) : '–';
}
