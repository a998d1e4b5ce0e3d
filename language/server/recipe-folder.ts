/** Where recipe files come from: the disk, or the editor's own file system. The server reads files by nothing else. */
export interface FolderReader {
  /** URIs of every recipe file in the open folders. What is named like one and cannot be read is told to `leftOut`. */
  list(folders: readonly string[], leftOut: LeftOut): Promise<readonly string[]>;
  /** The text of a file; undefined when it is gone, or cannot be read: then `leftOut` is told why. */
  read(uri: string, leftOut: LeftOut): Promise<string | undefined>;
}

/** `trouble`: one plain clause in English, to be said through `Wording.text`. */
export type LeftOut = (uri: string, trouble: string) => void;
