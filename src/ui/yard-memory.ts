import { PLAIN_DIALECT, type Dialect } from '../output/index.ts';

const KEPT_UNDER = 'backplumb-yard';

/** What may be chosen for each part of a dialect, and its words. */
export const DIALECT_CHOICES = {
  separator: [
    [',', 'comma'],
    [';', 'semicolon'],
    ['\t', 'tab'],
  ],
  decimal: [
    ['.', 'point, 2.5'],
    [',', 'comma, 2,5'],
  ],
  lengths: [
    ['job', 'as on the sheets'],
    ['in', 'inches'],
    ['ft', 'feet'],
    ['mm', 'millimeters'],
    ['m', 'meters'],
  ],
} as const;

/** The dialect last chosen on this device. */
export function keptDialect(): Dialect {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT_UNDER) ?? '{}') as Partial<Dialect>;
    return {
      separator: known('separator', kept.separator),
      decimal: known('decimal', kept.decimal),
      lengths: known('lengths', kept.lengths),
      mark: kept.mark === true,
    };
  } catch {
    return PLAIN_DIALECT;
  }
}

/** Remembers a dialect on this device. */
export function keepDialect(dialect: Dialect): void {
  try {
    localStorage.setItem(KEPT_UNDER, JSON.stringify(dialect));
  } catch {
    // A browser that keeps nothing starts with the plain one next time.
  }
}

/** A choice by its text, or the plain one where it is none. */
export function known<Part extends keyof typeof DIALECT_CHOICES>(
  part: Part,
  text: string | undefined,
): Dialect[Part] {
  const choices: readonly (readonly [string, string])[] = DIALECT_CHOICES[part];
  const found = choices.find(([value]) => value === text)?.[0] ?? PLAIN_DIALECT[part];
  return found as Dialect[Part];
}
