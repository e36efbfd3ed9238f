import { describe, expect, it } from 'vitest';
import readings from '../../../demo-data/tannery-lane.csv?raw';
import settings from '../../../demo-data/tannery-lane.job.json?raw';
import { bringIn, intakeColumns, readSite } from '../../../src/intake/index.ts';
import { Notebook } from '../../../src/notebook/index.ts';
import '../../../src/ui/working-detail.ts';
import { isProblem } from '../../../src/units/index.ts';
import {
  applyJobFile,
  openBook,
  readJobFile,
  startDocument,
  type Book,
} from '../../../src/worksheet/index.ts';
import { drawn, onPage } from './on-page.ts';

const book = demoBook();

describe('the working of the demo job', () => {
  const columns = book.sheets.flatMap((sheet) =>
    sheet.rowCount === 0
      ? []
      : sheet.columns
          .filter(({ formula }) => formula !== undefined)
          .map(({ id }) => ({ name: `${sheet.id}.${id}`, sheet: sheet.id, column: id })),
  );

  it('has every worked-out column of every sheet with rows', () => {
    expect(columns.length).toBeGreaterThan(60);
  });

  it.each(columns)('of $name shows what the cell shows', async ({ sheet, column }) => {
    const view = book.sheet(sheet)!;
    const detail = await onPage('bp-working-detail', { working: undefined });
    for (let row = 0; row < view.rowCount; row++) {
      const cell = view.cell(row, column);
      const working = book.working(sheet, view.rowId(row), column);
      detail.working = working;
      await drawn(detail);
      expect(working?.state).toBe(cell.state);
      expect(bare(working?.value ?? '')).toContain(bare(cell.text));
      // What was typed stands in the panel's head; what was worked out stands here.
      if (cell.state === 'known' && (cell.typed ?? '') === '') {
        expect(bare(detail.shadowRoot?.textContent ?? '')).toContain(bare(cell.text));
      }
    }
  });
});

// Fractions and units are set apart on the page.
function bare(text: string): string {
  return text.replaceAll(/\s/g, '');
}

function demoBook(): Book {
  const demo = openBook(new Notebook(startDocument('Tannery Lane')));
  const bytes = new TextEncoder().encode(readings);
  const columns = intakeColumns(demo.sheet('posts')?.columns ?? [], new Map());
  const intake = readSite(bytes, 'tannery-lane.csv', columns);
  const file = readJobFile(settings);
  if (isProblem(intake) || isProblem(file)) throw new Error('The demo can’t be read.');
  bringIn(intake, { name: 'tannery-lane.csv', bytes }, demo.notebook);
  applyJobFile(file, demo);
  return demo;
}
