/** Findings of the definition being typed in that can be accepted with a reason. */
import type { Offer } from './offer.js';
import type { Desk } from '../../checks/desk.js';
import type { TypingPlace } from './typing-place.js';

export function codesFor(desk: Desk, place: TypingPlace): readonly Offer[] {
  if (!place.definition) return [];
  const found = desk.checks.definition(place.definition).filter((finding) => finding.severity !== 'error');
  const byCode = new Map(found.map((finding) => [finding.code, finding]));
  return [...byCode.values()].map(({ code, message }, rank) => ({
    label: code,
    kind: 'code',
    detail: message,
    insert: `${code} because "\${1:}"`,
    snippet: true,
    rank,
  }));
}
