/** One computation asking for what it needs, and what it has asked so far. */
import type { PlateAnalysis, PlateTask, WoodFit, WoodTask } from './analyst.js';
import type { Ask, Basis, Derived, ModelError, Reply } from './derived-quantity.js';
import type { Value } from '../../facts/facts.js';
import type { Answering, NumberReply, Question } from './respondent.js';

export class Asking implements Ask {
  readonly questions: Question[] = [];
  readonly absent: string[] = [];
  pending = false;
  readonly assumptions: string[] = [];
  readonly doubts: ModelError[] = [];
  readonly basis = new Set<Basis>();
  readonly read = new Map<string, number>();

  constructor(
    private readonly evaluation: Answering,
    readonly member: string,
    private readonly moved: { readonly path: string; readonly si: number } | undefined,
  ) {}

  number(path: string): number {
    const si = this.find(path);
    if (si !== undefined) return si;
    // Go on with a harmless number, so that one question names everything that is missing; the result is thrown away.
    return 1;
  }

  numberIf(path: string): number | undefined {
    const before = this.absent.length;
    const si = this.find(path);
    const spoilt = this.absent.slice(before).filter((missing) => this.evaluation.isSaid(missing));
    this.absent.length = before;
    // Written so that it cannot be used is not the same as left out: nothing is taken in its place.
    for (const each of spoilt) this.absent.push(each);
    return si;
  }

  numberOr(path: string, fallback: number, assumption: string): number {
    const si = this.numberIf(path);
    if (si !== undefined) return si;
    this.assume(assumption);
    return fallback;
  }

  word(path: string): string | undefined {
    const value = this.value(path);
    return value?.kind === 'name' ? value.name : value?.kind === 'text' ? value.text : undefined;
  }

  value(path: string): Value | undefined {
    const value = this.evaluation.ground.value(path);
    this.questions.push({ kind: 'value', path, reply: value });
    return value;
  }

  members(part: string): readonly string[] {
    const members = this.evaluation.ground.members(part);
    this.questions.push({ kind: 'members', path: part, reply: members });
    return members;
  }

  missing(path: string): never {
    this.absent.push(path);
    throw ABSENT;
  }

  analyse(task: PlateTask): PlateAnalysis {
    return this.solved(() => this.evaluation.analyst.analysis(task));
  }

  fit(task: WoodTask): WoodFit {
    return this.solved(() => this.evaluation.analyst.fit(task));
  }

  private solved<T>(ask: () => T | undefined): T {
    // With something missing the task is made of placeholders: not worth a solver's time.
    const answer = this.pending || this.absent.length > 0 ? undefined : ask();
    if (answer) return answer;
    this.pending ||= this.absent.length === 0;
    throw WAITING;
  }

  shared<T>(name: string, make: (ask: Ask) => T): T {
    // With an input moved nothing can be shared: it may be the very one the part is made from.
    if (this.moved) return make(this);
    const part = this.evaluation.part(name, make);
    this.questions.push({ kind: 'part', path: name, make, reply: part });
    this.absent.push(...part.absent);
    this.pending ||= part.pending;
    this.assumptions.push(...part.assumptions);
    for (const error of part.doubts) this.doubt(error);
    for (const basis of part.basis) this.basis.add(basis);
    for (const [path, si] of part.read) this.read.set(path, si);
    if ('failed' in part.outcome) throw part.outcome.failed;
    return part.outcome.made as T; // made by this very `make`: a name stands for one way of making
  }

  doubt(error: ModelError): void {
    if (!this.doubts.some(({ key }) => key === error.key)) this.doubts.push(error);
  }

  assume(text: string): void {
    this.assumptions.push(text);
    this.basis.add('assumed');
  }

  private find(path: string): number | undefined {
    if (this.moved?.path === path) return this.moved.si;
    const answer = this.evaluation.answer(path);
    // Questions asked while an input is moved for a slope are not kept.
    if (!this.moved) {
      // What is pending is not asked for twice: with one pending quantity leaning on another it would be asked 2, 4, 8 … times.
      const reply = answer === PENDING ? PENDING_REPLY : this.evaluation.replyTo(path);
      this.questions.push({ kind: 'number', path, reply });
    }
    if (answer === PENDING) {
      this.pending = true;
      return undefined;
    }
    if (isAbsent(answer)) {
      this.absent.push(...answer);
      return undefined;
    }
    for (const basis of answer.basis) this.basis.add(basis);
    this.assumptions.push(...answer.assumptions);
    this.read.set(path, answer.si);
    return answer.si;
  }
}

export function shortReply(reply: Reply): NumberReply {
  if (isAbsent(reply)) return { si: undefined, grounds: reply.join(' ') };
  const basis = [...reply.basis].join(' ');
  return { si: reply.si, grounds: reply.assumptions.length === 0 ? basis : `${basis} ${reply.assumptions.join('|')}` };
}

/** The reply of a quantity whose solver has not delivered: it is the same as no other reply, and is not remembered. */
export const PENDING: readonly string[] = ['(pending)'];

const PENDING_REPLY = shortReply(PENDING);

export function isPending(derived: Derived): boolean {
  return !derived.known && derived.pending === true;
}

export function isAbsent(answer: Reply): answer is readonly string[] {
  return Array.isArray(answer);
}

/**
 * Thrown to give a computation up; what it was missing has been noted. Made once, because looking up where one was made
 * took longer than the computation, and nobody asks.
 */
const ABSENT = new Error('Something is missing.');
const WAITING = new Error('The solver has not answered.');
