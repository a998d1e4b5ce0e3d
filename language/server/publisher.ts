/**
 * Publishing findings: the files being typed in first, the rest in small portions between which the server answers
 * whoever asks. Only what changed is sent. A newer edit starts the round again.
 */
import type { Diagnostic } from 'vscode-languageserver-types';
import { toDiagnostic } from './convert.js';
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
  /** A round is done: every finding of the folder is out. */
  readonly done?: () => void;
}

/** How long one portion may hold up a waiting request, ms. */
const PORTION = 8;

export class Publisher {
  private readonly sent = new Map<string, string>();
  private round = 0;

  constructor(
    private readonly session: Session,
    private readonly ports: PublisherPorts,
  ) {}

  /** Something changed: work out what is to be said now. */
  refresh(): void {
    const round = ++this.round;
    const waiting = [...this.session.uris()];
    for (const uri of this.sent.keys()) if (!waiting.includes(uri)) this.publish(uri);
    const portion = () => {
      if (round !== this.round) return;
      const start = performance.now();
      while (waiting.length > 0 && performance.now() - start < PORTION) this.publish(waiting.shift()!);
      if (waiting.length > 0) this.ports.later(portion);
      else this.ports.done?.();
    };
    portion();
  }

  private publish(uri: string): void {
    const diagnostics = this.session
      .findings(uri)
      .map((finding) => toDiagnostic(this.session.desk, finding))
      .filter((diagnostic) => diagnostic !== undefined);
    const text = JSON.stringify(diagnostics);
    if ((this.sent.get(uri) ?? '[]') === text) return;
    if (diagnostics.length === 0) this.sent.delete(uri);
    else this.sent.set(uri, text);
    const version = this.ports.versionOf(uri);
    this.ports.send({ uri, diagnostics, ...(version === null ? {} : { version }) });
  }
}
