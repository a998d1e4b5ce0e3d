/** A question that leads back to itself, such as a model that starts from itself. */

/** One question of a ring: of which query, about what. */
export interface RingMember {
  readonly query: string;
  readonly key: unknown;
}

/**
 * Thrown to everybody who asks a query of the ring, whoever asked first. It is caught at the barrier of the definition
 * the question was about, and told there as a finding.
 */
export class CycleError extends Error {
  override readonly name = 'CycleError';

  /** `ring`: once round, each asking for the next and the last for the first; it begins with the least by name. */
  constructor(readonly ring: readonly RingMember[]) {
    super(`a question leads back to itself: ${ring.map(wordOf).join(' → ')}`);
  }

  /** The ring as it was met, turned so that it does not matter where it was entered. */
  static of(met: readonly RingMember[]): CycleError {
    let first = 0;
    met.forEach((member, i) => {
      if (wordOf(member) < wordOf(met[first]!)) first = i;
    });
    return new CycleError([...met.slice(first), ...met.slice(0, first)]);
  }
}

function wordOf({ query, key }: RingMember): string {
  return `${query} ${typeof key === 'string' ? key : nameOf(key)}`;
}

/** A definition goes by its name. */
function nameOf(key: unknown): string {
  const name = (key as { name?: { text?: unknown } } | null | undefined)?.name?.text;
  return typeof name === 'string' ? name : typeof key;
}
