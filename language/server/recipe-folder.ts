/** Where recipe files come from: the disk, or the editor's own file system. The server reads files by nothing else. */
export interface FolderReader {
  /** URIs of every recipe file in the open folders. */
  list(folders: readonly string[]): Promise<readonly string[]>;
  /** The text of a file; undefined when it cannot be read. */
  read(uri: string): Promise<string | undefined>;
}
