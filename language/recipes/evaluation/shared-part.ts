/** A part that several ask for, whoever they are: quantities by `ask.shared`, rules and drawings by `madeOf`. */
import { MechanicsError } from '../../mechanics/error.js';
import type { Ask } from './derived-quantity.js';
import type { Respondent } from './respondent.js';

/** A way of making a part, with the key it is always kept under. */
export interface SharedPart<T> {
  readonly key: string;
  readonly make: (ask: Ask) => T;
}

/** A part as rules and drawings ask for it: what was made, or why it could not be. */
export type Made<T> =
  | { readonly made: T }
  | {
      readonly made?: undefined;
      /** Paths that would make it known. */
      readonly missing: readonly string[];
      /** Why it cannot be made although nothing is missing. */
      readonly trouble?: string;
    };

/** What `evaluation` knows of a part, made once for all who ask. */
export function madeOf<T>(evaluation: Pick<Respondent, 'part'>, { key, make }: SharedPart<T>): Made<T> {
  const { outcome, absent } = evaluation.part(key, make);
  if (absent.length > 0) return { missing: [...new Set(absent)] };
  if ('made' in outcome) return { made: outcome.made as T }; // made by this very `make`: a key stands for one way of making
  if (outcome.failed instanceof MechanicsError) return { missing: [], trouble: outcome.failed.message };
  throw outcome.failed;
}
