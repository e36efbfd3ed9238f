import type { BookView } from '../worksheet/index.ts';

/** How much waits at a sheet, and the words for it. */
export interface Waiting {
  readonly asks: number;
  readonly stops: number;
  readonly cautions: number;
  /** `1 ask, 2 stops`; blank where nothing waits. */
  readonly words: string;
}

/** What waits at a sheet. */
export function waitingAt(book: BookView | undefined, sheet: string): Waiting {
  const asks = book?.asks().filter((ask) => ask.sheet === sheet).length ?? 0;
  const stops = book?.stops({ level: 'stop', sheet }).length ?? 0;
  const cautions = book?.stops({ level: 'caution', sheet }).length ?? 0;
  const strong = [counted(asks, 'ask'), counted(stops, 'stop')].filter((part) => part !== '');
  const words = strong.length > 0 ? strong.join(', ') : counted(cautions, 'caution');
  return { asks, stops, cautions, words };
}

/** `3 asks`, `1 ask`, `9,988 rows`, or blank for none. */
export function counted(count: number, one: string, many = `${one}s`): string {
  if (count === 0) return '';
  return `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`;
}
