import type { Stop, StopChoice } from '../../src/worksheet/index.ts';

/** The stops a book gives out: of a level, of a sheet, or all; stops before cautions. */
export function chosenStops(
  stops: readonly Stop[],
  { level, sheet }: StopChoice = {},
): readonly Stop[] {
  return ['stop', 'caution'].flatMap((each) =>
    stops.filter(
      (stop) =>
        stop.level === each &&
        (level ?? each) === each &&
        (sheet === undefined || stop.sheet === sheet),
    ),
  );
}
