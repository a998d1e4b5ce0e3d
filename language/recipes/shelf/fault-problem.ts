/** A fault of our own, as the file it was met in is told of it. */
import type { Problem, Span } from '../../facts/facts.js';
import type { Wording } from '../../wording/wording.js';
import { type Fault, faultInShort } from './barrier.js';

export function faultProblem(fault: Fault, span: Span, { say }: Pick<Wording, 'say'>): Problem {
  return {
    code: 'own-fault',
    message: say`Bookmatch met a fault of its own here; what depends on it is left out, and everything else goes on. Please report it with this definition and these words: ${faultInShort(fault)}.`,
    span,
    suggestions: [],
  };
}
