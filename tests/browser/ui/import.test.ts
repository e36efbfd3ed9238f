import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/import.ts';
import type { ImportScreen } from '../../../src/ui/import.ts';
import type { Desk } from '../../../src/ui/desk.ts';
import type { Preview } from '../../../src/ui/import-desk.ts';
import { ImportFlow } from '../../../src/ui/import-flow.ts';
import { barriers, drawn, focused, inside, onPage, press, words } from './on-page.ts';

let settled: string[];
let screen: ImportScreen;

beforeEach(async () => {
  await page.viewport(1200, 900);
  settled = [];
});

describe('<bp-import> while a file is read', () => {
  beforeEach(async () => {
    screen = await onPage('bp-import', { name: 'run.csv', share: 0.42 });
  });

  it('has no barriers', async () => {
    expect(await barriers(screen)).toEqual([]);
  });

  it('shows how far the reading is', () => {
    expect(words(screen.shadowRoot?.querySelector('.progress'))).toBe('42%');
    expect(inside(screen, 'progress').getAttribute('value')).toBe('42');
  });

  it('can be told to stop, by key', async () => {
    const stopped: string[] = [];
    screen.addEventListener('import-cancel', () => stopped.push('cancel'));
    await press('Tab', 'Enter');
    expect(stopped).toEqual(['cancel']);
  });
});

describe('a file that is put away before its reading begins', () => {
  it('is stopped without a word', async () => {
    const complaints: unknown[] = [];
    const hear = (event: PromiseRejectionEvent): void => {
      event.preventDefault();
      complaints.push(event.reason);
    };
    addEventListener('unhandledrejection', hear);
    let stop: ((why: Error) => void) | undefined;
    const preview = new Promise<Preview>((_, reject) => (stop = reject));
    const reading = { preview, cancel: () => stop?.(new Error('Stopped.')) };
    const flow = new ImportFlow(() => undefined);
    const desk = { readSite: () => Promise.resolve(reading) } as unknown as Desk;
    const started = flow.start(desk, new File([''], 'run.csv'), undefined);
    flow.cancel();
    expect(await started).toBeUndefined();
    await new Promise((resolve) => setTimeout(resolve, 20));
    removeEventListener('unhandledrejection', hear);
    expect(complaints).toEqual([]);
    await expect(preview).rejects.toThrow('Stopped.');
  });
});

describe('<bp-import> while a long job is opened', () => {
  it('says so, and offers no way to take out of a notebook what never came in', async () => {
    screen = await onPage('bp-import', { name: 'the job', doing: 'Opening', share: 0.2 });
    expect(words(inside(screen, 'h1'))).toBe('Opening the job');
    expect(words(inside(screen, '.progress'))).toBe('20%');
    expect(screen.shadowRoot?.querySelector('button')).toBeNull();
    expect(await barriers(screen)).toEqual([]);
  });
});

describe('<bp-import> with a file that was read', () => {
  beforeEach(async () => {
    screen = await onPage('bp-import', { name: 'run.csv', preview: previewOf({}) });
  });

  it('has no barriers', async () => {
    expect(await barriers(screen)).toEqual([]);
  });

  it('has no barriers on a phone, and stays within it', async () => {
    await page.viewport(390, 844);
    expect(await barriers(screen)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
  });

  it('puts the focus on its head', () => {
    expect(words(focused())).toBe('Before run.csv comes in');
  });

  it('shows each header, what it fills and why', () => {
    const rows = [...(screen.shadowRoot?.querySelectorAll('tbody')[0]?.rows ?? [])];
    expect(rows.map((row) => [row.cells[0], row.cells[2]].map((cell) => words(cell)))).toEqual([
      ['Bubble', 'it fits no column'],
      ['Gap in', 'its words say so'],
    ]);
    expect(fields().map(({ value }) => value)).toEqual(['', 'lean_gap']);
  });

  it('shows the first rows as they were read', () => {
    const cells = screen.shadowRoot?.querySelectorAll('table')[1]?.querySelectorAll('th, td') ?? [];
    expect([...cells].map((cell) => words(cell))).toEqual(['Line', 'Lean gap', '2', '3/8 in']);
  });

  it('settles a header on another column, by key, and keeps the focus there', async () => {
    fields()[0]?.focus();
    await userEvent.selectOptions(fields()[0]!, 'Level length');
    await expect.poll(() => settled).toEqual(['Bubble level_length']);
    await drawn(screen);
    expect(fields()[0]?.value).toBe('level_length');
    await expect.poll(() => focused()).toBe(fields()[0]);
  });

  it('gives the file out once it is to come in', async () => {
    const taken: unknown[] = [];
    screen.addEventListener('import-take', ({ detail }: CustomEventInit) => taken.push(detail));
    await press('Tab', 'Enter');
    expect(taken).toHaveLength(1);
  });
});

function fields(): HTMLSelectElement[] {
  return [...(screen.shadowRoot?.querySelectorAll('select') ?? [])];
}

function previewOf(told: Readonly<Record<string, string | null>>): Preview {
  return {
    name: 'run.csv',
    summary: '3 lines read: 2 posts, 1 lines passed over.',
    notes: ['A comma is the decimal mark in this file.'],
    headers: [
      { header: 'Bubble', column: told['Bubble'] ?? null, why: 'it fits no column' },
      { header: 'Gap in', column: 'lean_gap', why: 'its words say so' },
    ],
    columns: [
      { id: 'lean_gap', label: 'Lean gap' },
      { id: 'level_length', label: 'Level length' },
    ],
    rows: [
      ['Line', 'Lean gap'],
      ['2', '3/8 in'],
    ],
    remembered: false,
    settle: (header, column) => {
      settled.push(`${header} ${column ?? 'none'}`);
      const again = previewOf({ ...told, [header]: column });
      screen.preview = again;
      return Promise.resolve(again);
    },
    bringIn: () => new Promise(() => undefined),
  };
}
