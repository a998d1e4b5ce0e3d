import type { Metafile } from 'esbuild';

export function packagesIn(metafiles: readonly Metafile[]): string[];
export function noticesFor(folders: readonly string[]): string;
export function billFor(folders: readonly string[]): string;
