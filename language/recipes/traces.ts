/**
 * Answers remembered by what they read. Recipes of one model share most of their numbers, so the area of the outline, or
 * the stiffness of a brace nobody changed, is worked out once for all of them: before a derived quantity is computed,
 * the questions it asked last time are asked again, and when every reply is the same so is the answer.
 */
import type { Derived } from './evaluation.js';
import type { Value } from './facts.js';
import { sameValue } from './values.js';

/** A question a derived quantity asked, and the reply. */
export type Question =
  | { readonly kind: 'number'; readonly path: string; readonly reply: string }
  | { readonly kind: 'value'; readonly path: string; readonly reply: Value | undefined }
  | { readonly kind: 'members'; readonly path: string; readonly reply: string };

export interface Trace {
  readonly questions: readonly Question[];
  readonly answer: Derived;
  /** d(answer)/d(direct input), as far as anybody has asked. */
  readonly partials: Map<string, number>;
}

/** What can be asked again. */
export interface Respondent {
  replyTo(kind: 'number' | 'members', path: string): string;
  value(path: string): Value | undefined;
}

/** Enough for the recipes of a handful of models to share; older answers are worked out again when needed. */
const KEPT_PER_QUANTITY = 12;

export class Traces {
  private readonly byPath = new Map<string, Trace[]>();

  find(path: string, respondent: Respondent): Trace | undefined {
    const traces = this.byPath.get(path);
    const at = traces?.findIndex((trace) => trace.questions.every((question) => isSame(question, respondent))) ?? -1;
    if (!traces || at < 0) return undefined;
    const [trace] = traces.splice(at, 1);
    traces.unshift(trace!);
    return trace;
  }

  add(path: string, trace: Trace): void {
    const traces = this.byPath.get(path);
    if (!traces) this.byPath.set(path, [trace]);
    else if (traces.unshift(trace) > KEPT_PER_QUANTITY) traces.pop();
  }
}

function isSame(question: Question, respondent: Respondent): boolean {
  return question.kind === 'value'
    ? sameValue(question.reply, respondent.value(question.path))
    : question.reply === respondent.replyTo(question.kind, question.path);
}
