/**
 * Publishing findings: the files being typed in first, the rest in small portions between which the server answers
 * whoever asks. Only files that an edit may have touched are looked at, and only what changed is sent. A newer edit starts
 * the round again.
 *
 * While folders are still being read, a file not yet told of gets what its own text has wrong, and every other waits: what
 * leans on other files would be told too early and be withdrawn.
 */
import type { Diagnostic } from 'vscode-languageserver-types';
import { isSameData } from './convert.js';
import type { Session } from './session.js';

export interface Publication {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: Diagnostic[];
}

export interface PublisherPorts {
  readonly send: (publication: Publication) => void;
  readonly versionOf: (uri: string) => number | null;
  /** Runs a piece of work soon, after requests already waiting. */
  readonly later: (work: () => void) => void;
  /** Runs the first piece of a round, after every request that is waiting; absent: like all others. */
  readonly whenQuiet?: (work: () => void) => void;
  /** A round is done: every finding of the folder is out. */
  readonly done?: () => void;
  /** Where a fault of our own is written down. */
  readonly log?: (fault: unknown) => void;
}

/** How long one portion may hold up a waiting request, ms. */
const PORTION = 8;

export class Publisher {
  /** What the editor shows. */
  private readonly sent = new Map<string, readonly Diagnostic[]>();
  /** Files told of with all their findings. */
  private readonly wholly = new Set<string>();
  private round = 0;
  private isOver = false;

  constructor(
    private readonly session: Session,
    private readonly ports: PublisherPorts,
  ) {}

  /** Something changed: work out what is to be said now, after whoever is waiting for an answer. */
  refresh(): void {
    if (this.isOver) return;
    const round = ++this.round;
    const { session } = this;
    if (session.isLoading) {
      for (const uri of session.staleFiles()) {
        if (session.isTyped(uri) && !this.wholly.has(uri)) this.tell(uri, () => session.diagnosticsOfText(uri));
      }
      return;
    }
    const waiting = session.staleFiles();
    let next = 0;
    let steps: Iterator<void> | undefined;
    const portion = () => {
      if (round !== this.round || session.isLoading) return;
      const start = performance.now();
      while (next < waiting.length && performance.now() - start < PORTION) {
        const uri = waiting[next]!;
        // A large file takes many portions; told is all of it at once.
        steps ??= session.towardsFindings(uri);
        if (this.isUnderWay(steps)) continue;
        steps = undefined;
        next++;
        if (session.isKnown(uri)) this.wholly.add(uri);
        else this.wholly.delete(uri);
        this.tell(uri, () => session.diagnostics(uri));
      }
      if (next < waiting.length) this.ports.later(portion);
      else this.ports.done?.();
    };
    (this.ports.whenQuiet ?? this.ports.later)(portion);
  }

  /** The editor has taken its leave: nothing more is said to it. */
  stop(): void {
    this.isOver = true;
    this.round++;
  }

  private isUnderWay(steps: Iterator<void>): boolean {
    try {
      return steps.next().done !== true;
    } catch (fault) {
      this.ports.log?.(fault);
      return false;
    }
  }

  private tell(uri: string, ask: () => readonly Diagnostic[]): void {
    let diagnostics: readonly Diagnostic[];
    try {
      diagnostics = ask();
    } catch (fault) {
      this.ports.log?.(fault);
      return;
    }
    if (isSameData(this.sent.get(uri) ?? [], diagnostics)) return;
    if (diagnostics.length === 0) this.sent.delete(uri);
    else this.sent.set(uri, diagnostics);
    const version = this.ports.versionOf(uri);
    this.ports.send({ uri, diagnostics: [...diagnostics], ...(version === null ? {} : { version }) });
  }
}
