import { type Disposable, type Event, EventEmitter } from 'vscode';
import { State } from 'vscode-languageclient';
import type { LanguageClient } from '../language-client.js';

/**
 * The server's newest answer to one question. It tells of a new answer only when that says something else than the last:
 * a list that is drawn anew under the pointer loses clicks.
 */
export class Answered<T> implements Disposable {
  private readonly changed = new EventEmitter<undefined>();
  readonly onDidChange: Event<undefined> = this.changed.event;
  private written: string;
  private asked = 0;

  constructor(
    private readonly client: LanguageClient,
    private answer: T,
    private readonly ask: () => Promise<T>,
  ) {
    this.written = JSON.stringify(answer);
  }

  get value(): T {
    return this.answer;
  }

  /** Ask again. While there is no server to ask, the last answer stands. */
  async look(): Promise<void> {
    if (this.client.state !== State.Running) return;
    const asked = ++this.asked;
    try {
      const answer = await this.ask();
      const written = JSON.stringify(answer);
      if (asked !== this.asked || written === this.written) return;
      this.answer = answer;
      this.written = written;
      this.changed.fire(undefined);
    } catch (error) {
      console.error(error);
    }
  }

  dispose(): void {
    this.changed.dispose();
  }
}
