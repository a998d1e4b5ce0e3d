/** What the library holds to be read and never changed: the species, and the page of every finding. */
import { rulePage } from '../checks/manual.js';
import { SPECIES_TEXT, SPECIES_URI } from '../shop.js';
import { LIBRARY_SCHEME } from './protocol.js';
import { type Wording } from '../wording/wording.js';

const PAGE = new RegExp(`^${LIBRARY_SCHEME}:/findings/([a-z-]+)\\.md$`);

/** Where the page of a finding is read. */
export function pageUri(code: string): string {
  return `${LIBRARY_SCHEME}:/findings/${code}.md`;
}

export function libraryText(uri: string, wording: Wording): string | undefined {
  if (uri === SPECIES_URI) return SPECIES_TEXT;
  const code = PAGE.exec(uri)?.[1];
  return code === undefined ? undefined : rulePage(code, wording);
}
