import type { Column } from '../graph/index.ts';
import type { ColumnModel, StopModel } from './model.ts';
import type { Stop, StopChoice } from './view.ts';

/** The stops of one rule or column at one sheet. */
export interface StopGroup {
  readonly sheet: string;
  readonly level: Stop['level'];
  readonly stops: readonly Stop[];
}

/** The stops and cautions in force; a list of them stays the same list for as long as none of it changes. */
export class StopBoard {
  private groups: readonly StopGroup[] = [];
  private readonly lists = new Map<
    string,
    { readonly groups: readonly StopGroup[]; readonly stops: readonly Stop[] }
  >();

  /** Sets what is in force from now on; groups without a stop are left out. */
  put(groups: readonly StopGroup[]): void {
    this.groups = groups.filter(({ stops }) => stops.length > 0);
  }

  /** Those of a level, of a sheet, or all; stops come before cautions. */
  list({ level, sheet }: StopChoice = {}): readonly Stop[] {
    const levels = level === undefined ? (['stop', 'caution'] as const) : [level];
    const groups = levels.flatMap((each) =>
      this.groups.filter(
        (group) => group.level === each && (sheet === undefined || group.sheet === sheet),
      ),
    );
    const key = `${level ?? ''} ${sheet ?? ''}`;
    const known = this.lists.get(key);
    if (known && isSameList(known.groups, groups)) return known.stops;
    const stops = groups.flatMap((group) => group.stops);
    this.lists.set(key, { groups, stops });
    return stops;
  }
}

/** Keeps what was found by a rule or in a column for as long as the columns it was found in stay as they are. */
export class FoundOnce<Found> {
  private readonly all = new WeakMap<
    ColumnModel | StopModel,
    { readonly version: number; readonly circumstances: string; readonly found: Found }
  >();

  /** What was found last; undefined where one of the columns, or what holds for all rows, is not what it was. */
  known(
    part: ColumnModel | StopModel,
    columns: readonly Column[],
    circumstances: string,
  ): Found | undefined {
    const known = this.all.get(part);
    const isAsItWas =
      known?.version === versionOf(columns) && known.circumstances === circumstances;
    return isAsItWas ? known.found : undefined;
  }

  keep(
    part: ColumnModel | StopModel,
    columns: readonly Column[],
    circumstances: string,
    found: Found,
  ): Found {
    this.all.set(part, { version: versionOf(columns), circumstances, found });
    return found;
  }
}

// Versions only grow, so that their sum is another one as soon as one of them is.
function versionOf(columns: readonly Column[]): number {
  return columns.reduce((sum, { version }) => sum + version, 0);
}

/** Whether two lists hold the very same things. */
export function isSameList<T>(some: readonly T[], others: readonly T[]): boolean {
  return some.length === others.length && some.every((one, at) => one === others[at]);
}
