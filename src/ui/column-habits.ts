import type { ColumnView } from '../worksheet/index.ts';

/** How wide and whether columns of a sheet are shown, as a person last set it on this device. */
export class ColumnHabits {
  private readonly widths = new Map<string, number>();
  private readonly hidden = new Set<string>();
  private readonly sheet: string;

  constructor(sheet: string) {
    this.sheet = sheet;
    const kept = read(`${KEPT_UNDER}${sheet}`);
    for (const [column, width] of kept.widths) this.widths.set(column, width);
    for (const column of kept.hidden) this.hidden.add(column);
  }

  /** The width somebody gave a column; undefined where it fits what stands in it. [px] */
  width(column: string): number | undefined {
    return this.widths.get(column);
  }

  /** The columns that somebody gave a width, as one text. */
  get set(): string {
    return [...this.widths.keys()].join();
  }

  /** Gives a column a width; undefined lets it fit its cells again. */
  setWidth(column: string, width: number | undefined): void {
    if (width === undefined) this.widths.delete(column);
    else this.widths.set(column, Math.round(Math.max(NARROWEST, Math.min(WIDEST, width))));
    this.keep();
  }

  hide(column: string): void {
    this.hidden.add(column);
    this.keep();
  }

  showAll(): void {
    this.hidden.clear();
    this.keep();
  }

  /** Whether anything is hidden by hand. */
  get hides(): boolean {
    return this.hidden.size > 0;
  }

  /** Columns without the hidden ones; the first names the rows and always stays. */
  shown(columns: readonly ColumnView[]): readonly ColumnView[] {
    if (this.hidden.size === 0) return columns;
    return columns.filter(({ id }, place) => place === 0 || !this.hidden.has(id));
  }

  private keep(): void {
    try {
      const kept = { widths: [...this.widths], hidden: [...this.hidden] };
      localStorage.setItem(`${KEPT_UNDER}${this.sheet}`, JSON.stringify(kept));
    } catch {
      // A browser that keeps nothing still shows the columns so until the page is closed.
    }
  }
}

const KEPT_UNDER = 'backplumb-columns-';
/** A target wide enough to press. [px] */
const NARROWEST = 44;
const WIDEST = 900;

interface Kept {
  readonly widths: readonly [string, number][];
  readonly hidden: readonly string[];
}

function read(key: string): Kept {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? '{}') as Partial<Kept>;
    const widths = Array.isArray(kept.widths) ? kept.widths : [];
    const hidden = Array.isArray(kept.hidden) ? kept.hidden : [];
    return {
      widths: widths.filter((pair) => Array.isArray(pair) && Number.isFinite(pair[1])),
      hidden: hidden.filter((column) => typeof column === 'string'),
    };
  } catch {
    return { widths: [], hidden: [] };
  }
}
