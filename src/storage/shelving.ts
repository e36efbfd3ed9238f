import type { BackedUpJob } from '../notebook/index.ts';
import type { Problem } from '../units/index.ts';
import { shelve, type Shelving } from './journal-record.ts';
import type { KeptShelf } from './keeping.ts';
import { packed } from './parcel.ts';
import { notKept } from './trouble.ts';

/** Puts whole notebooks on the shelf beside what is there, all or none; the trouble, if there was any. */
export async function shelveAll(
  jobs: readonly BackedUpJob[],
  { store, format, changed }: KeptShelf,
  backedUpAt?: number,
): Promise<Problem | undefined> {
  const savedAt = Date.now();
  const notebooks: Shelving[] = [];
  for (const { id, document, archivedAt } of jobs)
    notebooks.push({
      entry: {
        id,
        name: document.name,
        savedAt,
        number: 0,
        format,
        ...(archivedAt !== undefined && { archivedAt }),
        ...(backedUpAt !== undefined && { backedUp: { number: 0, at: backedUpAt } }),
      },
      base: await packed(document, [], 0),
    });
  try {
    await shelve(store, notebooks);
  } catch (error) {
    return notKept(jobs.map(({ document }) => document.name).join(', '), error);
  }
  changed();
  return undefined;
}
