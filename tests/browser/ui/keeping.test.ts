import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { Desk, KeptJob } from '../../../src/ui/desk.ts';
import '../../../src/ui/keeping/keeping-bar.ts';
import '../../../src/ui/keeping/kept-jobs.ts';
import '../../../src/ui/keeping/panels.ts';
import type { RestorePlan } from '../../../src/ui/keeping/keeping-desk.ts';
import { fakeKeeping } from './fake-keeping.ts';
import { barriers, inside, onPage, words } from './on-page.ts';

const JOBS: readonly KeptJob[] = [
  { id: 'a', name: 'North run', saved: 'today', isBehind: true, backup: 'in no backup yet' },
  { id: 'b', name: 'South run', saved: 'today', isFinished: true },
  { id: 'c', name: 'West run', saved: 'today', isRemoved: true },
];

describe('<bp-kept-jobs>', () => {
  it('has no barriers, and says which work is in no backup', async () => {
    const list = await onPage('bp-kept-jobs', { jobs: JOBS, desk: deskOf([]) });
    expect(await barriers(list)).toEqual([]);
    expect(words(inside(list, '.backup'))).toContain('North run: in no backup yet.');
  });

  it.each([
    [1, 'archivedAt'],
    [3, 'removedAt'],
  ] as const)('takes its deed %i back with the button beside its words', async (place, mark) => {
    const asked: string[] = [];
    const list = await onPage('bp-kept-jobs', { jobs: JOBS, desk: deskOf(asked) });
    await userEvent.click(inside(list, `.kept .deeds button:nth-of-type(${String(place)})`));
    await expect.poll(() => list.shadowRoot?.querySelector('.done button')).not.toBeNull();
    await userEvent.click(inside(list, '.done button'));
    expect(asked).toEqual([`${mark} a true`, `${mark} a false`]);
  });

  it('copies a job, and takes the copy away again', async () => {
    const asked: string[] = [];
    const list = await onPage('bp-kept-jobs', { jobs: JOBS, desk: deskOf(asked) });
    await userEvent.click(inside(list, '.kept .deeds button:nth-of-type(2)'));
    await expect.poll(() => list.shadowRoot?.querySelector('.done button')).not.toBeNull();
    await userEvent.click(inside(list, '.done button'));
    expect(asked).toEqual(['copy a', 'removedAt copy of a true']);
  });
});

describe('<bp-keeping-bar>', () => {
  it('has no barriers, and keeps or takes what two windows wrote', async () => {
    const done: string[] = [];
    const clash = {
      where: 'Lean gap, post 3',
      place: { sheet: 'posts', row: 'r3', column: 'lean_gap' },
      standing: '3/8 in',
      other: '5/8 in',
      rowIsGone: false,
      keep: () => done.push('keep'),
      takeOther: () => done.push('take'),
    };
    const book = { clashes: { all: () => [clash] }, subscribe: () => () => undefined };
    const bar = await onPage('bp-keeping-bar', { book: book as never });
    expect(await barriers(bar)).toEqual([]);
    await userEvent.click(inside(bar, 'li button:nth-of-type(2)'));
    expect(done).toEqual(['take']);
  });
});

describe('the panels of keeping', () => {
  it('have no barriers', async () => {
    const desk = fakeKeeping([], {
      acts: () => Promise.resolve([{ number: 1, at: 0, label: 'lean gap, post 3' }]),
    });
    expect(await barriers(await onPage('bp-room', { desk }))).toEqual([]);
    expect(await barriers(await onPage('bp-history', { desk }))).toEqual([]);
    const plan: RestorePlan = { jobs: [{ name: 'North run', rows: 3, stands: 'differs', isRemoved: false, changes: 2, setAside: ['Not readable: rows, 2.'], choice: 'beside' }] }; // prettier-ignore
    expect(await barriers(await onPage('bp-restore', { plan: structuredClone(plan) }))).toEqual([]); // prettier-ignore
  });
});

function deskOf(asked: string[]): Desk {
  return { keeping: fakeKeeping(asked) } as unknown as Desk;
}
