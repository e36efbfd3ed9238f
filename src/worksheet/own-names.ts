import { functionNames } from '../formula/index.ts';
import { parseUnit, problem, type Problem } from '../units/index.ts';
import type { SheetDefinition } from './definition.ts';

const GRAMMAR = ['and', 'or', 'not', 'to', 'in', 'true', 'false', 'pi', 'mod', 'xor', 'null'];
const FOREIGN = ['undefined', 'nan', 'infinity', 'end'];
const LONGEST = 40;

/** Why a column of this sheet may not have this id; undefined where it may. */
export function refusedColumnName(
  id: string,
  sheet: SheetDefinition | undefined,
  sheets: readonly SheetDefinition[],
): Problem | undefined {
  const refused = refusedName(id);
  if (refused) return refused;
  if (sheets.some((other) => other.id === id)) return taken(id, 'a sheet');
  if (sheet?.columns.some((column) => column.id === id)) return taken(id, 'a column of this sheet');
  // A formula that means the input would read the column from then on.
  const inputs = sheets.find((other) => other.id === 'job')?.columns ?? [];
  if (inputs.some((input) => input.id === id)) return taken(id, 'an input of the job');
  // The other way round a column would stand in front of the input, and nobody would see it.
  if (sheet?.id === 'job' && hasColumn(id, sheets)) return taken(id, 'a column of another sheet');
  return undefined;
}

/** Why a sheet may not have this id; undefined where it may. */
export function refusedSheetName(
  id: string,
  sheets: readonly SheetDefinition[],
): Problem | undefined {
  const refused = refusedName(id);
  if (refused) return refused;
  if (sheets.some((other) => other.id === id)) return taken(id, 'a sheet');
  return hasColumn(id, sheets) ? taken(id, 'a column or an input') : undefined;
}

/** An id made of what a person called it: `Cap, type` becomes `cap_type`. */
export function nameFrom(label: string): string {
  return label
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^[_0-9]+|_+$/g, '')
    .slice(0, LONGEST);
}

function refusedName(id: string): Problem | undefined {
  if (!/^[a-z][a-z0-9_]*$/.test(id) || id.length > LONGEST)
    return problem(
      `Name “${id.slice(0, LONGEST)}”`,
      'A name in formulas begins with a letter and has small letters, digits and _ only.',
      `Write it like post_cap, with at most ${String(LONGEST)} characters.`,
    );
  if (parseUnit(id)) return taken(id, 'a unit');
  if (functionNames().includes(id)) return taken(id, 'a function');
  if ([...GRAMMAR, ...FOREIGN].includes(id)) return taken(id, 'a word of formulas');
  return undefined;
}

function hasColumn(id: string, sheets: readonly SheetDefinition[]): boolean {
  return sheets.some(({ columns }) => columns.some((column) => column.id === id));
}

function taken(id: string, by: string): Problem {
  return problem(`Name “${id}”`, `That is ${by} already.`, 'Choose another name.');
}
