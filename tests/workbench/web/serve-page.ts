import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, extname, join, normalize } from 'node:path';
import { QUIET_SETTINGS } from '../host/settings.js';
import type { PreparedHost } from '../host/prepare.js';

export interface ServedPage {
  readonly address: string;
  stop(): Promise<void>;
}

/**
 * VS Code for the web: the same workbench as the server's, but with no server behind it, only files to be fetched.
 * Extensions run in the browser's own workers. `extensions`: folders, by a name of one's choosing.
 */
export async function servePage(
  host: PreparedHost,
  extensions: Readonly<Record<string, string>>,
  folderUri: string,
): Promise<ServedPage> {
  const build = dirname(dirname(host.serverMain));
  const template = await readFile(join(build, 'out/vs/code/browser/workbench/workbench.html'), 'utf8');
  const shared: Readonly<Record<string, string>> = { build, ...extensions };

  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://127.0.0.1');
    const [, name = '', ...rest] = decodeURIComponent(pathname).split('/');
    const folder = shared[name];
    const send = (status: number, type: string, body: string | Buffer) => {
      // Webviews and workers are of another origin to a browser.
      response.writeHead(status, { 'content-type': type, 'access-control-allow-origin': '*' }).end(body);
    };
    if (pathname === '/') send(200, 'text/html', page(template, request.headers.host ?? '', extensions, folderUri));
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
    // Browsers treat this name as safe, which workers and webviews ask for.
    address: `http://localhost:${port}/`,
    stop: () =>
      new Promise((stopped) => {
        server.close(() => stopped());
        server.closeAllConnections();
      }),
  };
}

function page(template: string, authority: string, extensions: Readonly<Record<string, string>>, folderUri: string) {
  const configuration = {
    folderUri: uriParts(folderUri),
    additionalBuiltinExtensions: Object.keys(extensions).map((name) => ({
      scheme: 'http',
      authority,
      path: `/${name}`,
    })),
    configurationDefaults: QUIET_SETTINGS,
    productConfiguration: { enableTelemetry: false, extensionsGallery: undefined },
  };
  const values: Readonly<Record<string, string>> = {
    WORKBENCH_WEB_CONFIGURATION: JSON.stringify(configuration).replaceAll('"', '&quot;'),
    WORKBENCH_WEB_BASE_URL: '/build',
    WORKBENCH_NLS_FALLBACK_URL: '/build/out/nls.messages.js',
    WORKBENCH_NLS_URL: '/build/out/nls.messages.js',
  };
  return template.replace(/\{\{([^}]+)\}\}/g, (_, key: string) => values[key] ?? '');
}

function uriParts(uri: string): { readonly scheme: string; readonly path: string } {
  const { protocol, pathname } = new URL(uri);
  return { scheme: protocol.slice(0, -1), path: pathname };
}

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};
