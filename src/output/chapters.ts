import type { BookView, CellPlace, SheetView, Working, WorkingStep } from '../worksheet/index.ts';

/** A part of a calculation: its cells in the order in which somebody else follows them. */
export interface Chapter {
  readonly title: string;
  readonly workings: readonly Working[];
}

/** The calculation of one row of a sheet as the sheet says it is followed, with the cells that have something to show. */
export function chaptersOf(book: BookView, row: string, of: string): readonly Chapter[] {
  const follow = (sheet: string): SheetView['follow'] => book.sheet(sheet)?.follow ?? [];
  const chapters = follow(of).flatMap((each) => (each.length === 1 ? follow(each[0]) : [each]));
  return chapters.flatMap(([title, cells = '']) => {
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
  const entered = chapters.flatMap(({ workings }) =>
    workings.flatMap((working) =>
      working.steps.filter((step) => step.typed !== '' && counts(step, working)),
    ),
  );
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
