import { firstNames } from '../units/index.ts';
import type { Stop } from '../worksheet/index.ts';

/** A stop, and all the rows of its sheet where it says the same. */
export interface SharedStop extends Stop {
  /** What it says, as one text that tells it from the others. */
  readonly said: string;
  /** None where it is about the whole sheet or the job. */
  readonly rows: readonly Stop[];
}

/** Stops that say the same of several rows, said once. */
export function stopsAlike(stops: readonly Stop[]): readonly SharedStop[] {
  const groups = new Map<string, Stop & { said: string; rows: Stop[] }>();
  let [last, group]: [Stop | undefined, (Stop & { said: string; rows: Stop[] }) | undefined] = [
    undefined,
    undefined,
  ];
  for (const stop of stops) {
    // They come rule by rule, and on a long run by the thousand.
    if (!group || !last || !saysTheSame(last, stop)) {
      const said = `${stop.sheet} ${stop.level} ${stop.message} ${stop.source}`;
      group = groups.get(said) ?? { ...stop, said, rows: [] };
      groups.set(said, group);
      last = stop;
    }
    if (stop.row !== undefined && stop.sheet !== 'job') group.rows.push(stop);
  }
  return [...groups.values()];
}

function saysTheSame(a: Stop, b: Stop): boolean {
  return (
    a.message === b.message && a.level === b.level && a.source === b.source && a.sheet === b.sheet
  );
}

/** The rows of a stop in words: `hole 3, 4, 7 and 20 more`; blank for none. */
export function rowsInWords({ rows }: SharedStop): string {
  const [first = '', ...rest] = rows.map(({ rowName }) => rowName);
  const kind = /^\D+ /u.exec(first)?.[0] ?? '';
  const names = rest.map((name) => (name.startsWith(kind) ? name.slice(kind.length) : name));
  return firstNames([first, ...names]);
}
