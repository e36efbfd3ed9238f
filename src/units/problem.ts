/** Something a person has to put right, said in their words. Wrong data is a Problem; only wrong code throws. */
export interface Problem {
  /** Where to look: a file and line, a sheet and cell, or the function that refused. */
  readonly where: string;
  /** What was found there, quoting the person's own entry. */
  readonly found: string;
  /** The next thing to do, as an instruction. */
  readonly fix: string;
}

/** A number, or why there is none. */
export type Answer = number | Problem;

/** Builds a Problem; `where` is filled in later where only the caller knows it. */
export function problem(where: string, found: string, fix: string): Problem {
  return { where, found, fix };
}

/** Tells a Problem from any other value. */
export function isProblem(value: unknown): value is Problem {
  return (
    typeof value === 'object' &&
    value !== null &&
    'where' in value &&
    'found' in value &&
    'fix' in value
  );
}

/** The problem as one line of text: where, what, and what to do. */
export function sentence({ where, found, fix }: Problem): string {
  return [where === '' ? found : `${where}: ${found}`, fix].filter((part) => part !== '').join(' ');
}
