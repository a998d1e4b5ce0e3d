/**
 * Answers remembered by what they read. Recipes of one model share most of their numbers, so the area of the outline, or
 * the stiffness of a brace nobody changed, is worked out once for all of them: before a derived quantity is computed,
 * the questions it asked last time are asked again, and when every reply is the same so is the answer.
 */
import type { Derived } from './derived-quantity.js';
import { Leanings } from './leanings.js';
import type { Part, Question, Respondent } from './respondent.js';
import { sameValue } from '../instrument/values.js';

export interface Trace {
  readonly questions: readonly Question[];
  readonly answer: Derived;
  /** d(answer)/d(direct input), as far as anybody has asked. */
  readonly partials: Map<string, number>;
  /** The same of a quantity that knows its slopes, once somebody has asked. */
  own?: ReadonlyMap<string, number>;
}

/** Enough for the recipes of a handful of models to share; older answers are worked out again when needed. */
const KEPT_PER_PATH = 12;

/** Paths can be typed anew for ever (`bracing.x-b.height`, `bracing.x-ba.height` …); a shop has a few hundred. */
const KEPT_PATHS = 1000;

export class Traces {
  /** Of derived quantities, by path. */
  readonly answers = new AnswersByPath<Trace>();
  /** Of what several quantities are made from, by name. */
  readonly parts = new AnswersByPath<Part>();
  /** Who of all of them leant on what. */
  readonly leanings = new Leanings();
}

class AnswersByPath<T extends { readonly questions: readonly Question[] }> {
  private readonly byPath = new Map<string, T[]>();

  find(path: string, respondent: Respondent): T | undefined {
    const traces = this.byPath.get(path);
    const at = traces?.findIndex((trace) => trace.questions.every((question) => isSame(question, respondent))) ?? -1;
    if (!traces || at < 0) return undefined;
    const [trace] = traces.splice(at, 1);
    traces.unshift(trace!);
    return trace;
  }

  add(path: string, trace: T): void {
    const traces = this.byPath.get(path);
    if (!traces) {
      if (this.byPath.size >= KEPT_PATHS) this.byPath.delete(this.byPath.keys().next().value!);
      this.byPath.set(path, [trace]);
    } else if (traces.unshift(trace) > KEPT_PER_PATH) traces.pop();
  }
}

function isSame(question: Question, respondent: Respondent): boolean {
  switch (question.kind) {
    case 'number': {
      const { si, grounds } = respondent.replyTo(question.path);
      return si === question.reply.si && grounds === question.reply.grounds;
    }
    case 'value':
      return sameValue(question.reply, respondent.value(question.path));
    case 'members':
      return sameList(question.reply, respondent.members(question.path));
    case 'part':
      return question.reply === respondent.part(question.path, question.make);
  }
}

function sameList(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && a.every((item, i) => item === b[i]));
}
