/** Findings for another program. Lines and columns count from one. */
import type { CheckReport, ToldFinding } from '../told-findings.js';

export function findingsAsJson({ findings }: CheckReport): string {
  return asJson({ findings: findings.map(plainFinding) });
}

export function plainFinding({ code, severity, message, file, range }: ToldFinding): object {
  return { code, severity, message, file, range };
}

export function asJson(value: object): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}
