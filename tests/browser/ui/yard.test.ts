import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../src/ui/reports.ts';
import '../../../src/ui/yard.ts';
import type { YardDesk } from '../../../src/ui/yard-desk.ts';
import { treeRun } from './fake-jobs.ts';
import { barriers, inside, onPage, words } from './on-page.ts';

const job = { id: 'job-1', book: treeRun() };
let saved: string[];

const desk: YardDesk = {
  lists: [
    { id: 'material-list', label: 'Supplier’s list' },
    { id: 'post-list', label: 'Post list' },
  ],
  text: (_, list, { separator, decimal, lengths }) =>
    [list, `2${decimal}5 ${lengths}`].join(separator),
  save: (_, list, dialect) => saved.push(`${list} ${JSON.stringify(dialect)}`),
  message: () => '1 each  4x4 post 10 ft',
};

beforeEach(() => {
  saved = [];
  localStorage.removeItem('backplumb-yard');
});

describe('<bp-yard>', () => {
  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-yard', { yard: desk, job }))).toEqual([]);
  });

  it('shows the first lines as they will be', async () => {
    const yard = await onPage('bp-yard', { yard: desk, job });
    expect(words(inside(yard, 'pre'))).toBe('material-list,2.5 job');
    const [list, parted, decimal, lengths] = yard.shadowRoot!.querySelectorAll('select');
    await userEvent.selectOptions(list!, 'Post list');
    await userEvent.selectOptions(parted!, 'semicolon');
    await userEvent.selectOptions(decimal!, 'comma, 2,5');
    await userEvent.selectOptions(lengths!, 'millimeters');
    await expect.poll(() => words(inside(yard, 'pre'))).toBe('post-list;2,5 mm');
  });

  it('saves the list so, and remembers how', async () => {
    const yard = await onPage('bp-yard', { yard: desk, job });
    await userEvent.selectOptions(yard.shadowRoot!.querySelectorAll('select')[1]!, 'semicolon');
    await userEvent.click(inside(yard, '.mark input'));
    await userEvent.click(inside(yard, '.first'));
    const how = '{"separator":";","decimal":".","lengths":"job","mark":true}';
    expect(saved).toEqual([`material-list ${how}`]);
    const again = await onPage('bp-yard', { yard: desk, job });
    expect(words(inside(again, 'pre'))).toBe('material-list;2.5 job');
  });
});

describe('<bp-reports>', () => {
  const reports = [
    {
      name: 'run.csv',
      account: { read: 5, imported: 2, asked: 1, passedOver: 2 },
      words: '5 lines read = 2 imported + 1 asked about + 2 passed over.',
      asked: [{ line: 3, question: 'Lean gap: what did the tape say?' }],
      passedOver: [
        { line: 1, text: 'Oak Street', why: 'a line above the header' },
        { line: 2, text: 'Post,Gap', why: 'the header' },
      ],
    },
  ];

  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-reports', { reports }))).toEqual([]);
  });

  it('gives the sum of the lines, and why for each that is not imported', async () => {
    const panel = await onPage('bp-reports', { reports });
    expect(words(inside(panel, 'section p'))).toBe(
      '5 lines read = 2 imported + 1 asked about + 2 passed over.',
    );
    const lines = [...(panel.shadowRoot?.querySelectorAll('li') ?? [])].map((line) => words(line));
    expect(lines).toEqual([
      'Line 3: Lean gap: what did the tape say?',
      'Line 1: a line above the header. Oak Street',
      'Line 2: the header. Post,Gap',
    ]);
  });

  it('gives a file out again', async () => {
    const places: number[] = [];
    const panel = await onPage('bp-reports', { reports });
    panel.addEventListener('give-back', ({ detail }: CustomEventInit<number>) =>
      places.push(detail ?? -1),
    );
    await userEvent.click(inside(panel, 'section button'));
    expect(places).toEqual([0]);
  });

  it('says where no file came in', async () => {
    expect(words(inside(await onPage('bp-reports', { reports: [] }), 'dialog'))).toContain(
      'No file was brought into this job yet.',
    );
  });
});
