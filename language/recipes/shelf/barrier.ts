/**
 * The barrier around every question about one definition. An exception is a bug; whoever is at a bench is not to pay for it
 * with everything else the folder says. What is thrown ends at the question it was thrown in: the question answers as if
 * it knew nothing, whoever checks the definition hears of it, and it is logged. What was worked out from such an answer is
 * marked as misled, so that nothing false is made of it.
 */
import type { Definition } from '../../facts/facts.js';
import type { Memo, Query, QueryOptions } from './memo.js';

export interface Fault {
  /** What was being done, for a report: `question instrument`, `rule no-parent`. */
  readonly doing: string;
  readonly error: unknown;
}

export interface GuardedOptions<K, V> extends QueryOptions<K, V> {
  /** The answer in place of one that could not be worked out: what there is to say when nothing is known. */
  readonly otherwise: V;
  /** Under which key it is asked about a definition; undefined where it is not. */
  readonly of: (definition: Definition) => K | undefined;
}

type Outcome<V> = Worked<V> | { readonly fault: Fault };

export interface Worked<V> {
  readonly value: V;
  /** Something it read was answered in place of a fault. */
  readonly misled: boolean;
}

export class Barrier {
  private readonly questions: ((definition: Definition) => Fault | undefined)[] = [];
  private readonly logged = new Set<string>();
  /** Whether what is being worked out has been misled; the innermost last. */
  private readonly misled: boolean[] = [];

  constructor(
    private readonly memo: Memo,
    private readonly log: (words: string) => void = () => undefined,
  ) {}

  /** A remembered query that does not throw, but for a ring of questions: what a ring answers may not depend on who asked first. */
  query<K, V>(name: string, compute: (key: K) => V, options: GuardedOptions<K, V>): Query<K, V> {
    const { otherwise, of, equal = Object.is, ...others } = options;
    const outcomes = this.memo.query<K, Outcome<V>>(
      name,
      (key) => {
        try {
          return this.watch(() => compute(key));
        } catch (error) {
          return { fault: this.note({ doing: `question ${name}`, error }) };
        }
      },
      { ...others, equal: (a, b) => 'value' in a && 'value' in b && a.misled === b.misled && equal(a.value, b.value) },
    );
    this.questions.push((definition) => {
      const key = of(definition);
      if (key === undefined) return undefined;
      try {
        const outcome = outcomes.get(key);
        return 'fault' in outcome ? outcome.fault : undefined;
      } catch (error) {
        return this.note({ doing: `question ${name}`, error });
      }
    });
    return {
      get: (key) => {
        const outcome = outcomes.get(key);
        const isKnown = 'value' in outcome;
        if ((!isKnown || outcome.misled) && this.misled.length > 0) this.misled[this.misled.length - 1] = true;
        return isKnown ? outcome.value : otherwise;
      },
    };
  }

  /** Does a piece of work and says whether a fault elsewhere misled it. */
  watch<V>(work: () => V): Worked<V> {
    const depth = this.misled.push(false);
    try {
      const value = work();
      return { value, misled: this.misled[depth - 1] === true };
    } finally {
      this.misled.length = depth - 1;
    }
  }

  /** What was thrown in the questions about a definition. */
  faultsOf(definition: Definition): readonly Fault[] {
    return this.questions.map((fault) => fault(definition)).filter((fault) => fault !== undefined);
  }

  /** Does a piece of work for one definition of many; what it throws does not keep the others from theirs. */
  around<V>(doing: string, work: () => V, otherwise: V): V {
    try {
      return work();
    } catch (error) {
      this.note({ doing, error });
      return otherwise;
    }
  }

  /** Writes a fault to the log, once for as long as this folder is open. */
  note(fault: Fault): Fault {
    const words = `${fault.doing}: ${inFull(fault.error)}`;
    if (!this.logged.has(words)) this.log(words);
    this.logged.add(words);
    return fault;
  }
}

/** One line that a person can copy into a report. */
export function faultInShort({ doing, error }: Fault): string {
  const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  const [line = ''] = words.split('\n');
  return `${doing}: ${line.length > LONGEST ? `${line.slice(0, LONGEST)}…` : line}`;
}

const LONGEST = 160;

function inFull(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
