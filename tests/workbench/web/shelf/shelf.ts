/** For the tests: `shelf:/hollin-reach`, a folder kept in memory, which no program could read from a disk. */
import {
  type ExtensionContext,
  type FileChangeEvent,
  type FileStat,
  type FileSystemProvider,
  Disposable,
  EventEmitter,
  FileChangeType,
  FileSystemError,
  FileType,
  Uri,
  workspace,
} from 'vscode';

export async function activate(context: ExtensionContext): Promise<void> {
  const files = await workspace.fs.readFile(Uri.joinPath(context.extensionUri, 'files.json'));
  const texts = JSON.parse(new TextDecoder().decode(files)) as Readonly<Record<string, string>>;
  const options = { isCaseSensitive: true };
  context.subscriptions.push(workspace.registerFileSystemProvider('shelf', new Shelf(texts), options));
}

class Shelf implements FileSystemProvider {
  private readonly files: Map<string, Uint8Array>;
  private readonly changed = new EventEmitter<FileChangeEvent[]>();
  readonly onDidChangeFile = this.changed.event;

  constructor(texts: Readonly<Record<string, string>>) {
    this.files = new Map(Object.entries(texts).map(([path, text]) => [path, new TextEncoder().encode(text)]));
  }

  watch(): Disposable {
    return new Disposable(() => undefined);
  }

  stat(uri: Uri): FileStat {
    const size = this.files.get(uri.path)?.length;
    if (size === undefined && this.readDirectory(uri).length === 0) throw FileSystemError.FileNotFound(uri);
    return { type: size === undefined ? FileType.Directory : FileType.File, ctime: 0, mtime: 0, size: size ?? 0 };
  }

  readDirectory({ path }: Uri): [string, FileType][] {
    const within = path.endsWith('/') ? path : `${path}/`;
    const inside = [...this.files.keys()].filter((file) => file.startsWith(within));
    const entries = inside.map((file): [string, FileType] => {
      const [name = '', ...deeper] = file.slice(within.length).split('/');
      return [name, deeper.length > 0 ? FileType.Directory : FileType.File];
    });
    return [...new Map(entries)];
  }

  readFile(uri: Uri): Uint8Array {
    const content = this.files.get(uri.path);
    if (!content) throw FileSystemError.FileNotFound(uri);
    return content;
  }

  writeFile(uri: Uri, content: Uint8Array): void {
    const type = this.files.has(uri.path) ? FileChangeType.Changed : FileChangeType.Created;
    this.files.set(uri.path, content);
    this.changed.fire([{ type, uri }]);
  }

  delete(uri: Uri): void {
    this.files.delete(uri.path);
    this.changed.fire([{ type: FileChangeType.Deleted, uri }]);
  }

  rename(from: Uri, to: Uri): void {
    this.writeFile(to, this.readFile(from));
    this.delete(from);
  }

  createDirectory(): void {
    // A folder is there as soon as a file is in it.
  }
}
