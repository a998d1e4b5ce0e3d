import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { QUIET_SETTINGS } from '../host/settings.js';

export interface ServedPage {
  readonly address: string;
  stop(): Promise<void>;
}

/** What the page is made of: folders below which files are fetched, by the first part of their address. */
export interface Shared {
  /** The build of VS Code for the web. */
  readonly build: string;
  /** Extensions, by a name of one's choosing. */
  readonly extensions: Readonly<Record<string, string>>;
}

/** VS Code for the web, with nothing behind it but files to be fetched. Extensions run in the browser's own workers. */
export async function servePage({ build, extensions }: Shared, folderUri: string): Promise<ServedPage> {
  const template = await readFile(join(build, 'index.html'), 'utf8');
  const folders = new Map(Object.entries({ build, ...extensions }));

  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const [, name = '', ...rest] = decodeURIComponent(pathname).split('/');
    const folder = folders.get(name);
    const send = (status: number, type: string, body: string | Buffer) => {
      // Workers and webviews are of another origin to a browser.
      response.writeHead(status, { 'content-type': type, 'access-control-allow-origin': '*' }).end(body);
    };
    if (pathname === START) send(200, 'text/html', page(template, request.headers.host ?? '', extensions, folderUri));
    else if (folder === undefined) send(404, 'text/plain', 'not here');
    else {
      readFile(join(folder, normalize(`/${rest.join('/')}`))).then(
        (body) => send(200, TYPES[extname(pathname)] ?? 'application/octet-stream', body),
        () => send(404, 'text/plain', 'not here'),
      );
    }
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  return {
    // Browsers take this name for safe, which workers and webviews ask for.
    address: `http://localhost:${port}${START}`,
    stop: () =>
      new Promise((stopped) => {
        server.close(() => stopped());
        server.closeAllConnections();
      }),
  };
}

/** The page refers to its parts from here. */
const START = '/build/';

function page(template: string, authority: string, extensions: Shared['extensions'], folderUri: string): string {
  const { protocol, pathname } = new URL(folderUri);
  const addresses = Object.keys(extensions).map((name) => ({ scheme: 'http', authority, path: `/${name}` }));
  const configuration = {
    folderUri: { scheme: protocol.slice(0, -1), path: pathname },
    additionalBuiltinExtensions: addresses,
    configurationDefaults: QUIET_SETTINGS,
    productConfiguration: { enableTelemetry: false },
    // Each panel is an origin of its own; browsers take every name below this one for this machine.
    webviewEndpoint: `http://{{uuid}}.${authority}/build/${PANELS}`,
  };
  const written = JSON.stringify(configuration).replaceAll('"', '&quot;');
  // The configuration has places to be filled in of its own.
  const [before = '', after = ''] = template.split('{{WORKBENCH_WEB_CONFIGURATION}}');
  const emptied = (part: string) => part.replace(/\{\{[^}]+\}\}/g, '');
  return emptied(before) + written + emptied(after);
}

/** Where the build keeps the frame that panels are put into. */
const PANELS = 'out/vs/workbench/contrib/webview/browser/pre';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};
