/**
 * What any answer ever leant on, by name: for everything that was asked, who asked for it. When two instruments differ in a few
 * values, all that may come out otherwise is what is reached from those; the rest is the same, and need not be asked again.
 *
 * It only grows, with the quantities there are and not with the instruments, and holds for all that were computed since it was begun.
 */
import type { Differences } from './derived-quantity.js';
import type { Question } from './respondent.js';

/** Who makes up words for ever (`bracing.x-b`, `bracing.x-ba` …) has them forgotten again; a shop has some hundreds. */
const MOST = 5000;
const KEPT = 256;

export class Leanings {
  /** By what was asked: who asked for it. */
  private readonly readers = new Map<string, Set<string>>();
  private readonly partsAsked = new Set<string>();
  /** By differences, for as long as nothing new is known. */
  private readonly reached = new Map<string, ReadonlySet<string>>();
  /** Begun anew so often. What was computed before may lean on what is no longer known here. */
  era = 0;
  /** Changes whenever something is learnt. */
  version = 0;

  /** An answer was worked out by these questions. */
  note(asker: string, questions: readonly Question[]): void {
    if (this.readers.size > MOST) this.beginAnew();
    let isNew = this.enter(asker);
    for (const question of questions) {
      const asked = nameOf(question);
      if (question.kind === 'members') this.partsAsked.add(question.path);
      isNew = this.enter(asked) || isNew;
      const readers = this.readers.get(asked)!;
      if (readers.has(asker)) continue;
      readers.add(asker);
      isNew = true;
    }
    if (!isNew) return;
    this.version++;
    this.reached.clear();
  }

  /** Parts whose members anybody asked for. */
  get parts(): ReadonlySet<string> {
    return this.partsAsked;
  }

  /** Everything whose answer may be another, where these differ. */
  reachedFrom(differences: Differences): ReadonlySet<string> {
    const key = keyOf(differences);
    const known = this.reached.get(key);
    if (known) return known;
    const reached = new Set([...this.readers.keys()].filter((name) => isTouched(name, differences)));
    // A set is gone through in the order of entry, what is added on the way included.
    for (const name of reached) for (const reader of this.readers.get(name) ?? []) reached.add(reader);
    if (this.reached.size >= KEPT) this.reached.clear();
    this.reached.set(key, reached);
    return reached;
  }

  private enter(name: string): boolean {
    if (this.readers.has(name)) return false;
    this.readers.set(name, new Set());
    return true;
  }

  private beginAnew(): void {
    this.readers.clear();
    this.partsAsked.clear();
    this.reached.clear();
    this.era++;
    this.version++;
  }
}

/** Whether the answer itself, and not only what it leans on, is said otherwise. */
export function isTouched(name: string, { values, members, elsewhere }: Differences): boolean {
  if (name.startsWith(MEMBERS)) return members.has(name.slice(MEMBERS.length));
  if (values.has(name)) return true;
  // A word of a point or a size changes with the whole of it.
  const dot = name.lastIndexOf('.');
  if (dot > 0 && values.has(name.slice(0, dot))) return true;
  if (elsewhere.size === 0) return false;
  for (let at = dot; at > 0; at = name.lastIndexOf('.', at - 1)) if (elsewhere.has(name.slice(0, at))) return true;
  return elsewhere.has(name);
}

/** What a shared part is called among quantities. No path has a space in it. */
export function nameOfPart(part: string): string {
  return `part ${part}`;
}

const MEMBERS = 'members ';

function nameOf({ kind, path }: Question): string {
  if (kind === 'part') return nameOfPart(path);
  return kind === 'members' ? MEMBERS + path : path;
}

function keyOf({ values, members, elsewhere }: Differences): string {
  return `${[...values].join(' ')}|${[...members].join(' ')}|${[...elsewhere].join(' ')}`;
}
