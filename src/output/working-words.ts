import type { WorkingStep } from '../worksheet/index.ts';

/** How the value of a step came there and who answers for it, in a few words each. */
export function cameBy({ origin, typed, standing, source, note }: WorkingStep): readonly string[] {
  const came = {
    typed: `typed “${typed}”`,
    'starting value': `a new job starts with “${typed}”`,
    agreed: `blanks agreed to be “${typed}”`,
    'worked out': 'worked out',
    'whole column': 'all its rows',
    blank: 'not entered',
  }[origin];
  const words = [came, origin === 'typed' ? source : authority(standing, source), note];
  return words.filter((each) => each !== '');
}

/** Standing and source in one line: `code, IBC 2012 1807.3.2.1`. */
export function authority(standing: string, source: string): string {
  const parts = source.startsWith(standing) ? [source] : [standing, source];
  return parts.filter((part) => part !== '').join(', ');
}
