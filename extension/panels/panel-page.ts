import { type Webview, Uri, env } from 'vscode';

/** Bundles of pages: `drawing.js` and `drawing.css` for the panel `drawing`. */
export function pagesFolder(extension: Uri): Uri {
  return Uri.joinPath(extension, 'dist/panels');
}

/** The document of a panel: its own script and styles and nothing else, neither from the network nor written in line. */
export function panelPage(webview: Webview, extension: Uri, name: string, title: string): string {
  const address = (file: string) => webview.asWebviewUri(Uri.joinPath(pagesFolder(extension), file)).toString();
  const nonce = freshNonce();
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="${escaped(env.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<link rel="stylesheet" href="${address(`${name}.css`)}">
</head>
<body><script nonce="${nonce}" src="${address(`${name}.js`)}"></script></body>
</html>`;
}

function freshNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return btoa(String.fromCharCode(...bytes)).replace(/\W/g, '');
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
