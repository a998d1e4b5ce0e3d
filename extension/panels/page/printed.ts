/// <reference lib="dom" />
/**
 * What is on the page as a document of its own: no script, nothing from elsewhere, black on white. The browser writes out
 * its own tree here, which escapes every text in it.
 */
export function printedPage(title: string, hint: string, styles: string): string {
  const main = document.querySelector('main')!.cloneNode(true) as HTMLElement;
  for (const part of main.querySelectorAll('.screen-only, script')) part.remove();
  // Paper leads nowhere.
  for (const button of main.querySelectorAll('button')) button.replaceWith(button.textContent.trim());
  for (const link of main.querySelectorAll('[role=link]')) {
    for (const attribute of ['role', 'tabindex', 'aria-label']) link.removeAttribute(attribute);
  }
  const page = document.implementation.createHTMLDocument(title);
  page.documentElement.lang = document.documentElement.lang;
  const head = (html: Partial<HTMLMetaElement>) => Object.assign(page.createElement('meta'), html);
  const policy = head({
    httpEquiv: 'Content-Security-Policy',
    content: "default-src 'none'; style-src 'unsafe-inline'",
  });
  const charset = page.createElement('meta');
  charset.setAttribute('charset', 'utf-8');
  page.head.prepend(charset, policy);
  const style = page.createElement('style');
  style.textContent = `${styles}\n${PAPER}`;
  page.head.append(style);
  const note = page.createElement('p');
  note.className = 'hint';
  note.textContent = hint;
  page.body.append(note, main);
  // Marks that lit leaves for itself.
  return `<!DOCTYPE html>\n${page.documentElement.outerHTML.replace(/<!--.*?-->/gs, '')}\n`;
}

/** Hand a document over as a file, where no program can be asked to open it. */
export function handOver(fileName: string, html: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([html], { type: 'text/html' }));
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

const PAPER = `
:root { color-scheme: light; --line: #999; --quiet: #444; --accent: #000; --paper: #fff; --ink: #000; }
body { margin: 24px auto; max-width: 64em; font: 10pt/1.4 system-ui, sans-serif; }
.hint { color: #444; font-style: italic; }
@page { margin: 14mm; }
@media print { body { margin: 0; max-width: none; font-size: 8.5pt; } .hint { display: none; } }
`;
