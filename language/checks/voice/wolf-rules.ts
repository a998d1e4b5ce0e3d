/** Notes that the body takes apart, in recipes that ask for what is heard. */
import { heardOf } from '../../recipes/derived/voice-board.js';
import { isInForce } from '../in-force.js';
import type { Rule } from '../rule.js';
import { wolfSentences } from './wolf-words.js';

/** Of many, the worst are told. */
const TOLD = 3;

export const WOLF_NOTE: Rule = {
  code: 'wolf-note',
  severity: 'information',
  title: 'A note that a resonance of the body takes apart',
  reason:
    'Where a note falls on a strong resonance of a light body, string and body trade their energy to and fro: the note starts loud, warbles and dies. It can be calmed by moving the resonance to between two notes. Told only of recipes that hold or expect what takes the solver, so that findings never wait for it; the comparison shows it of every recipe.',
  bad: '',
  good: '',
  of: ['recipe'],
  check(definition, workshop, report) {
    const { name } = definition;
    if (!isInForce(definition, workshop) || !workshop.needsModes(name.text)) return;
    const evaluation = workshop.evaluation(name.text);
    const heard = evaluation && heardOf(evaluation);
    if (!heard) return;
    for (const sentence of wolfSentences(heard, workshop.wording).slice(0, TOLD)) report(name.span, sentence);
  },
};
