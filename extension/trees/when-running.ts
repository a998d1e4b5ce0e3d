import { type LanguageClient, State } from 'vscode-languageclient/node';

/** What the server answers, or `otherwise` while there is none to ask: a view then fills when the first news comes. */
export async function whenRunning<T>(client: LanguageClient, ask: () => Promise<T>, otherwise: T): Promise<T> {
  if (client.state !== State.Running) return otherwise;
  try {
    return await ask();
  } catch (error) {
    console.error(error);
    return otherwise;
  }
}
