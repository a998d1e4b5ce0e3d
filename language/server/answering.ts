/**
 * How every request is answered: not at all once the client has withdrawn it, and never with an exception. Requests are
 * answered one after another, each from the texts as they stood when its turn came; a withdrawal overtakes the requests
 * still waiting, so that work nobody wants any more is not begun.
 */
import {
  type CancellationToken,
  type Connection,
  LSPErrorCodes,
  MessageType,
  ResponseError,
  ShowMessageNotification,
} from 'vscode-languageserver';
import { faultInShort } from '../recipes/shelf/barrier.js';
import type { Wording } from '../wording/wording.js';

/** Makes a handler of `work`; `otherwise` is the answer when the work meets a fault of its own. */
export type Answer = <P, R>(
  otherwise: R,
  work: (params: P, token?: CancellationToken) => R | ResponseError,
) => (params: P, token?: CancellationToken) => R | ResponseError;

export interface Answers {
  /** For what an editor asks of itself as one types: a fault leaves the answer out, and the person is told once. */
  readonly answer: Answer;
  /**
   * For what our own panels and commands ask: they show the person the sentence that a fault is answered with. An empty
   * answer would say something else, and something false.
   */
  readonly answerOrSay: Answer;
}

/** `asked`: called at each request. */
export function answering(
  connection: Pick<Connection, 'console' | 'sendNotification'>,
  wording: () => Wording,
  asked?: () => void,
): Answers {
  /** Told already: who types asks the same fifty times a minute. */
  const told = new Set<string>();
  const guard = (work: () => unknown, token: CancellationToken | undefined, failed: (fault: unknown) => unknown) => {
    asked?.();
    if (token?.isCancellationRequested) return withdrawn();
    const guarded = (fault: unknown) => {
      connection.console.error(inFull(fault));
      return failed(fault);
    };
    try {
      const answer = work();
      return answer instanceof Promise ? answer.catch(guarded) : answer;
    } catch (fault) {
      return guarded(fault);
    }
  };
  const sentence = (fault: unknown) => {
    const { say } = wording();
    const words = faultInShort({ doing: 'answering', error: fault });
    return say`Bookmatch met a fault of its own and left this answer out; everything else goes on. Please report it with these words: ${words}.`;
  };
  const answer: Answer = (otherwise, work) => (params, token) =>
    guard(
      () => work(params, token),
      token,
      (fault) => {
        const words = sentence(fault);
        if (!told.has(words) && told.size < MOST_TOLD) {
          void connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Error, message: words });
        }
        told.add(words);
        return otherwise;
      },
    ) as ReturnType<typeof work>;
  const answerOrSay: Answer = (_, work) => (params, token) =>
    guard(
      () => work(params, token),
      token,
      (fault) => new ResponseError(LSPErrorCodes.RequestFailed, sentence(fault)),
    ) as ReturnType<typeof work>;
  return { answer, answerOrSay };
}

export function withdrawn(): ResponseError {
  return new ResponseError(LSPErrorCodes.RequestCancelled, 'withdrawn');
}

/** More faults than this in one session are in the log alone. */
const MOST_TOLD = 5;

/** The same for what is told and not asked: a fault is written to the log and the server goes on. */
export function guarded<P>(
  connection: Pick<Connection, 'console'>,
  work: (params: P) => void | Promise<void>,
): (params: P) => Promise<void> {
  return async (params) => {
    try {
      await work(params);
    } catch (fault) {
      connection.console.error(inFull(fault));
    }
  };
}

export function inFull(fault: unknown): string {
  return fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
}
