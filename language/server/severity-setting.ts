/** The settings `bookmatch.severity`, how grave each finding is to the person, by its code, and `bookmatch.talk`, how much is said. */
import { type Finding, SEVERITIES, type Severity } from '../checks/finding.js';
import { CODES } from '../checks/rules.js';
import { inEditor, type Talk, TALKS } from '../checks/talk.js';

export const SEVERITY_SECTION = 'bookmatch.severity';

/** What a person set, by code. `off`: not to be shown at all. */
export type Severities = ReadonlyMap<string, Severity | 'off'>;

const LEVELS: readonly (Severity | 'off')[] = [...SEVERITIES, 'off'];

/** From whatever stands in the settings; what is no code or no severity is left out. */
export function readSeverities(setting: unknown): Severities {
  if (typeof setting !== 'object' || setting === null || Array.isArray(setting)) return new Map();
  return new Map(
    Object.entries(setting).flatMap(([code, level]) => {
      const known = LEVELS.find((one) => one === level);
      return known !== undefined && CODES.includes(code) ? [[code, known] as const] : [];
    }),
  );
}

/** How findings are wanted: each as grave as set, and in all as much as set. */
export interface Grades {
  readonly severities: Severities;
  readonly talk: Talk;
}

export const AS_THEY_ARE: Grades = { severities: new Map(), talk: 'usual' };

/** What is no level counts as the usual one. */
export function readTalk(setting: unknown): Talk {
  return TALKS.find((talk) => talk === setting) ?? 'usual';
}

/** The findings as the person wants them. What was set for one code stands before how much is said in all. */
export function graded(findings: readonly Finding[], { severities, talk }: Grades): readonly Finding[] {
  if (severities.size === 0 && talk === 'usual') return findings;
  return findings.flatMap((finding) => {
    const severity = severities.get(finding.code);
    if (severity === undefined) return inEditor(finding, talk) ?? [];
    return severity === 'off' ? [] : [severity === finding.severity ? finding : { ...finding, severity }];
  });
}

/** The setting as the manifest declares it (JSON Schema, draft 7). Written into it by `npm run generate:settings`. */
export function severitySchema(): Readonly<Record<string, unknown>> {
  return {
    propertyNames: { enum: [...CODES].sort() },
    additionalProperties: { type: 'string', enum: [...LEVELS] },
  };
}
