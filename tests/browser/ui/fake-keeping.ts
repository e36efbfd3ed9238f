import type { KeepingDesk, WholeDeeds } from '../../../src/ui/keeping/keeping-desk.ts';

/** A shelf that writes down what is asked of it. */
export function fakeKeeping(
  asked: string[],
  {
    whole = {},
    ...other
  }: Partial<Omit<KeepingDesk, 'whole'>> & { whole?: Partial<WholeDeeds> } = {},
): KeepingDesk {
  const note = (what: string): Promise<void> => {
    asked.push(what);
    return Promise.resolve();
  };
  const deeds: WholeDeeds = {
    backup: (ids) => {
      asked.push(`backup ${ids?.join(' ') ?? 'all'}`);
      return Promise.resolve({ text: '{}', jobs: [], setAside: [] });
    },
    noteBackup: () => note('note backup'),
    duplicate: async (id) => {
      await note(`copy ${id}`);
      return `copy of ${id}`;
    },
    bringBack: (_, label) => void asked.push(`bring back ${label}`),
    room: () => Promise.resolve({ used: 1_500_000, free: 2_000_000_000, isPromised: false }),
    askToStay: () => Promise.resolve(false),
    ...whole,
  };
  return {
    whole: () => Promise.resolve(deeds),
    mark: (id, mark, isOn) => note(`${mark} ${id} ${String(isOn)}`),
    erase: (id) => note(`erase ${id}`),
    acts: () => Promise.resolve([]),
    lookBack: () => Promise.reject(new Error('This job is no longer here.')),
    ...other,
  };
}
