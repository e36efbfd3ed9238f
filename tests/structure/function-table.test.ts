import { describe, expect, it } from 'vitest';
import { CATALOG } from '../../src/trade/index.ts';
import { functionTable, tableInGuide } from './function-table.ts';

describe('the table of functions in DEVELOPERS.md', () => {
  it('has every function with a source and a check', async () => {
    const rows = (await functionTable()).split('\n').slice(2);
    expect(rows).toHaveLength(CATALOG.size);
    expect(
      rows.filter((row) => row.split(' | ').some((part) => part.replaceAll('|', '').trim() === '')),
    ).toEqual([]);
  });

  it('stands as the docs of the functions say', async () => {
    expect(tableInGuide()).toBe(await functionTable());
  });
});
