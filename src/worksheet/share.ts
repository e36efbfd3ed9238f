import type { NotebookDocument, OwnPart } from '../notebook/index.ts';
import { problem, type Problem } from '../units/index.ts';

/** What a shared file holds, not yet checked against a notebook. */
export interface Shared {
  readonly title: string;
  /** The sheet it is about. */
  readonly sheet: string;
  readonly where: string;
  readonly parts: readonly (readonly [string, OwnPart])[];
  readonly formulas: readonly (readonly [string, string])[];
}

const MARK = 'sheet';
const LONGEST = 1_000_000;

/** A sheet as a file: the user's sheet whole, or their columns and formulas on a built-in one. */
export function sharedText(sheet: string, { own, formulas }: NotebookDocument): string {
  const mine = (name: string) => name === sheet || name.startsWith(`${sheet}.`);
  const title = own.get(sheet)?.['title'];
  return `${JSON.stringify(
    {
      backplumb: MARK,
      format: 1,
      sheet,
      title: typeof title === 'string' ? title : sheet,
      own: [...own].filter(([name]) => mine(name)),
      formulas: [...formulas].filter(([name]) => mine(name)),
    },
    null,
    2,
  )}\n`;
}

/** Whether a text is that of a shared sheet, sound or not. */
export function isSharedText(text: string): boolean {
  return /^\s*\{\s*"backplumb":\s*"sheet"/.test(text);
}

/** A shared file read: its shape only. */
export function readShared(text: string): Shared | Problem {
  if (text.length > LONGEST) return refused('it is longer than any sheet');
  let value: unknown;
  try {
    value = JSON.parse(text) as unknown;
  } catch {
    return refused('it stops before its end, or is not a sheet');
  }
  const file = mapOf(value);
  if (file?.get('backplumb') !== MARK) return refused('it is not a shared sheet');
  if (file.get('format') !== 1) return refused('it was written by a newer version');
  const sheet = file.get('sheet');
  const title = file.get('title');
  const parts = pairs(file.get('own'), (part) => (mapOf(part) ? (part as OwnPart) : undefined));
  const formulas = pairs(file.get('formulas'), (formula) =>
    typeof formula === 'string' ? formula : undefined,
  );
  if (typeof sheet !== 'string' || typeof title !== 'string' || !parts || !formulas)
    return refused('a part of it is damaged');
  const stray = [...parts, ...formulas].find(
    ([name]) => name !== sheet && !name.startsWith(`${sheet}.`),
  );
  if (stray) return refused(`“${stray[0]}” in it belongs to another sheet`);
  if (parts.length + formulas.length === 0) return refused('nothing in it is anybody’s own');
  return { title, sheet, where: `Sheet file “${title.slice(0, 60)}”`, parts, formulas };
}

function refused(why: string): Problem {
  return problem('Sheet file', `${why}.`, 'Choose a sheet that was shared from here.');
}

function mapOf(value: unknown): ReadonlyMap<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  return new Map<string, unknown>(Object.entries(value));
}

function pairs<T>(
  value: unknown,
  read: (item: unknown) => T | undefined,
): readonly (readonly [string, T])[] | undefined {
  if (!Array.isArray(value)) return undefined;
  const items = value.map((pair: unknown): readonly [string, T] | undefined => {
    if (!Array.isArray(pair) || pair.length !== 2) return undefined;
    const [name, item] = pair as unknown[];
    const one = read(item);
    return typeof name === 'string' && one !== undefined ? [name, one] : undefined;
  });
  return items.every((item) => item !== undefined) ? items : undefined;
}
