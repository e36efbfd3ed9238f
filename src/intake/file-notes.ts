import type { Intake } from './intake.ts';

/** How a file was read, in words: what was noticed, which columns fit nothing, which units were taken. */
export function fileNotes(intake: Intake): readonly string[] {
  return [...intake.notes, ...keptColumns(intake), ...assumedUnits(intake)];
}

function keptColumns({ mapping }: Intake): readonly string[] {
  return mapping.flatMap(({ header, column, why }) =>
    column === null ? [`Column “${header}” is kept as it is: ${why}.`] : [],
  );
}

/** What was taken of numbers that no unit stands by, once each. */
function assumedUnits({ rows }: Intake): readonly string[] {
  const said = rows.flatMap(({ assumed }) => [...assumed.values()]);
  return [...new Set(said.filter((why) => /\btaken as\b/.test(why)))].map((why) => `${why}.`);
}
