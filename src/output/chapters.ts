import type { BookView, CellPlace, Working, WorkingStep } from '../worksheet/index.ts';

/** A part of a calculation: its cells in the order in which somebody else follows them. */
export interface Chapter {
  readonly title: string;
  readonly workings: readonly Working[];
}

/** What a hole is reckoned by, from the ground to what is chosen, whatever order its columns have. */
const OF_A_HOLE: readonly (readonly [title: string, cells: string])[] = [
  [
    'Ground and wind',
    'posts.position posts.height job.ground_bearing job.run_length posts.from_end posts.near_end posts.tributary posts.strip_start posts.wind_pressure',
  ],
  ['What the wind asks', 'posts.wind_force posts.wind_arm posts.wind_moment holes.wind_bending'],
  [
    'What the ground holds',
    'holes.lateral_width holes.gravel_laid holes.capacity holes.used holes.capacity_left holes.frost_grip_force',
  ],
  [
    'Which depth governs',
    'holes.local_minimum posts.by_height posts.below_frost posts.ground_and_wind posts.depth_needed holes.embedment holes.governing_rule holes.depth_reached holes.stopped_by holes.gravel holes.depth_found holes.depth holes.shortfall',
  ],
  [
    'What is chosen',
    'holes.width holes.equal_width holes.equal_concrete holes.rock_choice holes.rock_next holes.set_how',
  ],
  [
    'Concrete and post',
    'holes.concrete holes.concrete_ordered holes.bags holes.above_grade holes.post_length holes.post_stock',
  ],
];

const OF_A_POST: typeof OF_A_HOLE = [
  [
    'What was found',
    'posts.lean_total posts.lean_angle posts.lean_slope posts.top_offset posts.strength posts.cause posts.readings_say posts.remedy posts.work',
  ],
  ...OF_A_HOLE,
  [
    'The wait',
    'cure.strength_wait cure.maturity_wait cure.wait cure.rehang_after cure.strength_then',
  ],
  [
    'Bracing',
    'bracing.wind bracing.load bracing.screw_reaches bracing.screw_value bracing.screws_needed',
  ],
];

/** The calculation of one post, or of its hole alone, with the cells that have something to show. */
export function chaptersOf(
  book: BookView,
  row: string,
  of: 'posts' | 'holes' = 'holes',
): readonly Chapter[] {
  return (of === 'posts' ? OF_A_POST : OF_A_HOLE).flatMap(([title, cells]) => {
    const workings = cells.split(' ').flatMap((name): Working[] => {
      const [sheet = '', column = ''] = name.split('.');
      const at = sheet === 'job' ? (book.sheet('job')?.rowId(0) ?? '') : row;
      const working = book.working(sheet, at, column);
      return working?.formula === undefined || working.state === 'blank' ? [] : [working];
    });
    return workings.length === 0 ? [] : [{ title, workings }];
  });
}

/** The cells of chapters that say more than the cell they take their value from. */
export function withoutPassing(chapters: readonly Chapter[]): readonly Chapter[] {
  return chapters.flatMap(({ title, workings }) => {
    const kept = workings.filter(
      ({ place, taken, isOverruled }) =>
        isOverruled || LED_TO.has(place.column) || !/^[\w.]+$/u.test(taken),
    );
    return kept.length === 0 ? [] : [{ title, workings: kept }];
  });
}

// What a reader looks for, wherever it comes from.
const LED_TO = new Set(['depth', 'width', 'embedment', 'local_minimum']);

/** The readings and inputs that a calculation rests on, as somebody wrote them, each once. */
export function restsOn(chapters: readonly Chapter[]): readonly WorkingStep[] {
  const read = chapters.flatMap(({ workings }) =>
    workings.flatMap((working) => working.steps.filter((step) => counts(step, working))),
  );
  const entered = read.filter(({ typed }) => typed !== '');
  return [...new Map(entered.map((step) => [spot(step.place), step])).values()];
}

/** The names a cell takes that stand neither among the readings nor as a cell of the calculation. */
export function unexplained(
  working: Working,
  chapters: readonly Chapter[],
): readonly WorkingStep[] {
  const told = new Set(
    chapters.flatMap(({ workings }) => workings.map(({ place }) => spot(place))),
  );
  return working.steps.filter(
    (step) =>
      step.typed === '' &&
      step.taken !== '' &&
      counts(step, working) &&
      !told.has(spot(step.place)),
  );
}

// What only settled which branch is taken is left out, unless somebody typed it or the code asks for a judgment.
function counts(
  { name, isUsed, origin, standing, place }: WorkingStep,
  { taken }: Working,
): boolean {
  const names: readonly string[] = taken.match(/[\w.]+/gu) ?? [];
  const isSaid = origin === 'typed' || (standing === 'code' && place?.sheet === 'job');
  return isUsed && (isSaid || names.includes(name));
}

function spot(place: CellPlace | undefined): string {
  return place ? `${place.sheet} ${place.column} ${place.row}` : '';
}
