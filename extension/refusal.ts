import { LSPErrorCodes, ResponseError } from 'vscode-languageclient';

/** Whether the server answered with a sentence for the person: why there is no answer. */
export function isRefusal(error: unknown): error is ResponseError {
  return error instanceof ResponseError && error.code === LSPErrorCodes.RequestFailed;
}
