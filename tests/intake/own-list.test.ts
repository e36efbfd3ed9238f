import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../src/csv/index.ts';
import { isProblem, LENGTH, TEXT, quantity } from '../../src/units/index.ts';
import { readSite, type IntakeColumn } from '../../src/intake/index.ts';

interface SheetColumn {
  readonly id: string;
  readonly label: string;
  readonly called?: string;
  readonly unit?: string;
  readonly kind: string;
  readonly entry?: boolean;
}

const sheet = JSON.parse(
  readFileSync(new URL('../../worksheets/posts.json', import.meta.url), 'utf8'),
) as { readonly columns: readonly SheetColumn[] };
const entered = sheet.columns.filter(({ entry }) => entry === true);
const computed = sheet.columns.filter(({ entry }) => entry !== true);
const columns = entered.map(({ id, label, called, kind, unit }): IntakeColumn => ({
  id,
  label: called ?? label,
  kind: kind === 'length' ? quantity(LENGTH) : TEXT,
  unit: unit ?? '',
}));
const header = ({ label, called, unit }: SheetColumn): string =>
  unit === undefined ? (called ?? label) : `${called ?? label} (${unit})`;

describe('our own post list', () => {
  it('comes back column by column and entry by entry', () => {
    const values = entered.map(({ kind }, at) =>
      kind === 'length' ? `${String(at + 1)} 1/4` : `note ${String(at)}`,
    );
    const text = writeCsv([entered.map(header), values]);
    const intake = readSite(new TextEncoder().encode(text), 'post-list.csv', {
      columns,
      settled: new Map(),
    });
    if (isProblem(intake)) throw new Error(intake.found);
    expect(intake.mapping.map(({ column }) => column)).toEqual(entered.map(({ id }) => id));
    const row = intake.rows[0]!.cells;
    for (const [at, { id, kind, unit }] of entered.entries()) {
      expect(row.get(id), id).toBe(
        kind === 'length' ? `${String(at + 1)} 1/4 ${unit ?? ''}` : `note ${String(at)}`,
      );
    }
  });

  it('brings no worked-out number back as an entry', () => {
    const all = [...entered.filter(({ id }) => id === 'post' || id === 'lean_gap'), ...computed];
    const text = writeCsv([all.map(header), all.map((_, at) => String(at + 1))]);
    const intake = readSite(new TextEncoder().encode(text), 'post-list.csv', {
      columns,
      settled: new Map(),
      workedOut: computed.map(header),
    });
    if (isProblem(intake)) throw new Error(intake.found);
    expect([...intake.rows[0]!.cells.keys()]).toEqual(['post', 'lean_gap']);
    expect(intake.rows[0]!.kept.size).toBe(computed.length);
  });
});
