/**
 * How every request is answered: not at all once the client has withdrawn it, and never with an exception. Requests are
 * answered one after another, each from the texts as they stood when its turn came; a withdrawal overtakes the requests
 * still waiting, so that work nobody wants any more is not begun.
 */
import { type CancellationToken, type Connection, LSPErrorCodes, ResponseError } from 'vscode-languageserver';

/** Makes a handler of `work`; `otherwise` is the answer when the work meets a fault of its own. */
export type Answer = <P, R>(
  otherwise: R,
  work: (params: P) => R | ResponseError,
) => (params: P, token?: CancellationToken) => R | ResponseError;

export function answering(connection: Pick<Connection, 'console'>): Answer {
  return (otherwise, work) => (params, token) => {
    if (token?.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, 'withdrawn');
    try {
      return work(params);
    } catch (fault) {
      connection.console.error(inFull(fault));
      return otherwise;
    }
  };
}

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
