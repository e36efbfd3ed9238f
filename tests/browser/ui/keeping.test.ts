import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { Desk, KeptJob } from '../../../src/ui/desk.ts';
import { giveBackup } from '../../../src/ui/keeping/give-file.ts';
import '../../../src/ui/keeping/history.ts';
import '../../../src/ui/keeping/keeping.ts';
import '../../../src/ui/keeping/kept-jobs.ts';
import '../../../src/ui/keeping/restore.ts';
import '../../../src/ui/keeping/room.ts';
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

describe('<bp-room>', () => {
  it('shows the room that is used and free, what the browser promises, and what saved means', async () => {
    const panel = await onPage('bp-room', { desk: fakeKeeping([]) });
    await expect.poll(() => words(inside(panel, 'dialog'))).toContain('Used by all jobs 1.5 MB Free for more 2.0 GB'); // prettier-ignore
    expect(words(inside(panel, 'dialog'))).toMatch(/may clear it when the device runs out of room.*Saved means that the browser was asked to write to the disk/s); // prettier-ignore
  });
});

describe('<bp-keeping>', () => {
  it('reminds of a job whose last backup is older than the work, until it is backed up or put away', async () => {
    const due: KeptJob = { id: 'a', name: 'North run', saved: '', isDue: true, backup: 'in no backup yet' }; // prettier-ignore
    const desk = { ...deskOf([]), list: () => Promise.resolve([due]) } as unknown as Desk;
    const job = { id: 'a', book: { name: 'North run', subscribe: () => () => undefined } };
    const keeping = await onPage('bp-keeping', { desk, job: job as never });
    const bar = () => keeping.querySelector('bp-keeping-bar')?.shadowRoot?.querySelector('section');
    await expect.poll(() => bar()?.textContent).toContain('North run: in no backup yet.');
    [...(bar()?.querySelectorAll('button') ?? [])].at(-1)?.click();
    await expect.poll(bar).toBeUndefined();
  });
});

describe('a backup that is given out', () => {
  const wish = { ids: ['a'], jobName: 'North run', isPacked: false };

  beforeEach(() => {
    Reflect.deleteProperty(window, 'showSaveFilePicker');
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it('goes where the person says, asked while the press is fresh, and counts once it is written', async () => {
    const asked: string[] = [];
    pickFile(asked);
    const said = giveBackup(wish, fakeKeeping(asked).whole());
    // At once: a browser lets a page ask only within the press itself.
    expect(asked).toEqual(['pick north-run.json']);
    expect(await said).toBe('chosen.json saved.');
    expect(asked.slice(1)).toEqual(['backup a', 'write {}', 'close', 'note backup']);
  });

  it('counts for nothing where the person turns away, or the disk does not take it', async () => {
    const asked: string[] = [];
    pickFile(asked, { pick: new DOMException('', 'AbortError') });
    expect(await giveBackup(wish, fakeKeeping(asked).whole())).toBe('Not saved.');
    pickFile(asked, { write: new DOMException('Full.', 'QuotaExceededError') });
    await expect(giveBackup(wish, fakeKeeping(asked).whole())).rejects.toThrow('Full.');
    expect(asked).not.toContain('note backup');
  });

  it.each([
    ['knows no such question', undefined],
    ['does not let the page ask', { pick: new DOMException('', 'SecurityError') }],
  ])('is a download where the browser %s', async (_, faults) => {
    const asked: string[] = [];
    if (faults) pickFile(asked, faults);
    const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockReturnValue();
    const packed = giveBackup({ ...wish, isPacked: true }, fakeKeeping(asked).whole());
    expect(await packed).toBe('north-run.json.gz saved where this browser puts files.');
    expect((click.mock.contexts[0] as HTMLAnchorElement).download).toBe('north-run.json.gz');
    expect(asked).toContain('note backup');
  });
});

/** A browser that asks where a file should go. */
function pickFile(asked: string[], { pick, write }: { pick?: Error; write?: Error } = {}): void {
  const writable = {
    write: async (content: Blob) => {
      if (write) throw write;
      asked.push(`write ${await content.text()}`);
    },
    close: () => void asked.push('close'),
  };
  const showSaveFilePicker = ({ suggestedName }: { suggestedName: string }) => {
    asked.push(`pick ${suggestedName}`);
    if (pick) return Promise.reject(pick);
    return Promise.resolve({ name: 'chosen.json', createWritable: () => Promise.resolve(writable) }); // prettier-ignore
  };
  Object.assign(window, { showSaveFilePicker });
}

function deskOf(asked: string[]): Desk {
  return { keeping: fakeKeeping(asked) } as unknown as Desk;
}
