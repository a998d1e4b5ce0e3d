/** Two folders on the disk, made anew for each run, and what other programs do in them. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { URI } from 'vscode-uri';
import { textOf } from '../../language/recipes/shelf/file-text.js';

const ENDING = '.bookmatch';

export class Folders {
  private readonly root = mkdtempSync(join(tmpdir(), 'bookmatch-soak-'));
  readonly first = join(this.root, 'shop');
  /** Opened and closed beside the first. */
  readonly second = join(this.root, 'other shop');

  constructor(files: ReadonlyMap<string, string>) {
    for (const folder of [this.first, this.second]) mkdirSync(folder);
    for (const [name, text] of files) writeFileSync(join(this.first, name), text);
    writeFileSync(join(this.second, 'guest (1) + more.bookmatch'), GUEST);
  }

  uri(path: string): string {
    return URI.file(path).toString();
  }

  /** Every recipe file there is, in a lasting order. */
  paths(): readonly string[] {
    const inFolder = (folder: string) =>
      readdirSync(folder)
        .filter((name) => name.endsWith(ENDING))
        .map((name) => join(folder, name));
    return [...inFolder(this.first).sort(), ...inFolder(this.second).sort()];
  }

  newPath(number: number): string {
    return join(number % 2 === 0 ? this.first : this.second, `new-${number}${ENDING}`);
  }

  read(path: string): string {
    try {
      return textOf(readFileSync(path)).text;
    } catch {
      return '';
    }
  }

  write(path: string, text: string, as: 'text' | 'latin-1' | 'mark' = 'text'): void {
    writeFileSync(path, as === 'latin-1' ? Buffer.from(text, 'latin1') : as === 'mark' ? `\uFEFF${text}` : text);
  }

  rename(from: string, to: string): void {
    renameSync(from, to);
  }

  delete(path: string): void {
    rmSync(path, { force: true });
  }

  remove(): void {
    rmSync(this.root, { recursive: true, force: true });
  }
}

const GUEST = `// What a friend's shop sends along; the names may already be taken.
model parlour {
  note "Lent."
  body { width: 340 mm }
}

recipe guest-1 for parlour {
  because "To see what comes of it."
  top.thickness: 2.6 mm
}
`;
