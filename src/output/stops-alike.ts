import { firstNames } from '../units/index.ts';
import type { Stop } from '../worksheet/index.ts';

/** A stop, and all the rows of its sheet where it says the same. */
export interface SharedStop extends Stop {
  /** What it says, as one text that tells it from the others. */
  readonly said: string;
  /** None where it is about the whole sheet or the job. */
  readonly rows: readonly Stop[];
}

const known = new WeakMap<readonly Stop[], readonly SharedStop[]>();

/** Stops that say the same of several rows, said once. */
export function stopsAlike(stops: readonly Stop[]): readonly SharedStop[] {
  // A list of stops stays the same list until one of them changes, and on a long run has thousands.
  const shared = known.get(stops) ?? sharedAmong(stops);
  known.set(stops, shared);
  return shared;
}

function sharedAmong(stops: readonly Stop[]): readonly SharedStop[] {
  const groups = new Map<string, Stop & { said: string; rows: Stop[] }>();
  for (const stop of stops) {
    const said = saidBy(stop);
    let group = groups.get(said);
    if (!group) groups.set(said, (group = { ...stop, said, rows: [] }));
    if (stop.row !== undefined && stop.sheet !== 'job') group.rows.push(stop);
  }
  return [...groups.values()];
}

const saidKnown = new WeakMap<Stop, string>();

// Most stops are those of before the change.
function saidBy(stop: Stop): string {
  let said = saidKnown.get(stop);
  if (said === undefined)
    saidKnown.set(stop, (said = `${stop.sheet} ${stop.level} ${stop.message} ${stop.source}`));
  return said;
}

/** The rows of a stop in words: `hole 3, 4, 7 and 20 more`; blank for none. */
export function rowsInWords({ rows }: SharedStop): string {
  const [first = '', ...rest] = rows.map(({ rowName }) => rowName);
  const kind = /^\D+ /u.exec(first)?.[0] ?? '';
  const names = rest.map((name) => (name.startsWith(kind) ? name.slice(kind.length) : name));
  return firstNames([first, ...names]);
}
