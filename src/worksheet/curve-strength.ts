import type { Notebook } from '../notebook/index.ts';
import { DURATION, quantity } from '../units/index.ts';
import type { CurveLine, CurveMark, CurveStretch, CurveView } from './curve-view.ts';
import type { Engine } from './engine.ts';
import { Measures } from './measures.ts';
import { Sweep, valueAt } from './sweep.ts';
import { forecastOf } from './curve-forecast.ts';
import { spotOf } from './working.ts';
import type { Spot } from './working-steps.ts';

const STEPS = 60;
/** How far past the last hour that matters the curve is drawn. */
const BEYOND = 1.2;
const HOUR = 3600;
/** Drawn where no wait is known. [s] */
const ORDINARY_WAIT = 48 * HOUR;
const CAUTION =
  'An estimate, for concrete kept moist. What the bag says, local code and licensed practice come first.';
const FREEZES =
  'It may freeze before it has the strength to rehang at: no rehang date is given, and the curve holds for concrete kept from freezing.';
const LOG_NOT_READ =
  'A temperature log is entered and none of it counts yet: each reading needs a temperature and an hour since the first pour.';

/** What the strength is worked by. */
type Warmth = 'log' | 'air' | 'none';

/** Strength against hours since the pour of a row of the cure sheet, or of concrete poured first where there is no such row. */
export function strengthCurve(
  row: string | undefined,
  engine: Engine,
  notebook: Notebook,
): CurveView {
  const post = row === undefined ? undefined : spotOf({ sheet: 'cure', row }, engine, notebook);
  const first = post ?? spotOf({ sheet: 'job', row: 'job' }, engine, notebook);
  if (!first) throw new Error('There is no job sheet.');
  return new Strength(first, post !== undefined).view();
}

class Strength {
  private readonly spot: Spot;
  private readonly isPost: boolean;
  private readonly show: Measures;
  private readonly warmth: Warmth;

  constructor(spot: Spot, isPost: boolean) {
    this.spot = spot;
    this.isPost = isPost;
    this.show = new Measures(spot, 'cure');
    this.warmth = warmthOf(spot);
  }

  view(): CurveView {
    const { spot, show, warmth } = this;
    const stated = this.stated();
    const reach = BEYOND * Math.max(ORDINARY_WAIT / 2, ...stated.map(({ age }) => age));
    const ages = agesTo(reach, stated);
    const own = this.line(this.name(), ages, warmth);
    const isDrawn = own.points.length > 1;
    const level = valueAt(spot, 'rehang_strength');
    return {
      heading: this.isPost ? 'Strength since the pour' : 'Strength since the first pour',
      x: { label: 'Since the pour', unit: 'h', from: 0, steps: [6, 12, 24, 48, 96, 168] },
      y: { label: 'Strength', unit: show.unit('strength_then'), from: 0 },
      lines: isDrawn ? [own, ...this.reference(ages)] : [],
      marks: isDrawn ? [this.pour(), ...stated.flatMap((each) => this.mark(each))] : [],
      levels:
        level === undefined
          ? []
          : [{ y: show.in('strength_then', level), label: `${show.text('strength_then', level)} to rehang` }], // prettier-ignore
      stretches: isDrawn ? this.stretches(reach) : [],
      waits: isDrawn ? '' : this.whyNot(),
      notes: isDrawn ? this.notes() : [],
    };
  }

  /** The ages that the sheet states. */
  private stated(): readonly { readonly age: number; readonly label: string }[] {
    const { spot, show, isPost } = this;
    const wait = isPost && !this.freezes() ? valueAt(spot, 'wait') : undefined;
    const common = valueAt(spot, isPost ? 'common_wait' : 'set_hours');
    const strong = isPost ? valueAt(spot, 'strength_wait') : undefined;
    const planned = isPost ? valueAt(spot, 'rehung_at - poured_at') : undefined;
    const hours = (age: number) => show.text('wait', age);
    const level = valueAt(spot, 'rehang_strength') ?? 0;
    const marks = [
      { age: wait, label: (age: number) => `rehang from ${hours(age)}` },
      { age: common === wait ? undefined : common, label: (age: number) => `common wait, ${hours(age)}` }, // prettier-ignore
      { age: strong === wait ? undefined : strong, label: (age: number) => `${show.text('strength_then', level)} at ${hours(age)}` }, // prettier-ignore
      { age: planned, label: (age: number) => `planned, ${hours(age)}` },
    ];
    return marks.flatMap(({ age, label }) =>
      age === undefined || age <= 0 ? [] : [{ age, label: label(age) }],
    );
  }

  private pour(): CurveMark {
    return { x: 0, y: 0, label: 'pour' };
  }

  private mark({ age, label }: { readonly age: number; readonly label: string }): CurveMark[] {
    const [strength = NaN] = this.strengths([age], this.warmth);
    return Number.isNaN(strength) ? [] : [{ x: age / HOUR, y: strength, label }];
  }

  private line(name: string, ages: readonly number[], warmth: Warmth): CurveLine {
    const strengths = this.strengths(ages, warmth);
    const points = ages.map((age, at) => [age / HOUR, strengths[at] ?? NaN] as const);
    return { name, points: points.filter(([, strength]) => !Number.isNaN(strength)) };
  }

  /** What it is compared with, where the temperature is not the one the standard curve stands for. */
  private reference(ages: readonly number[]): readonly CurveLine[] {
    const isSame = this.warmth === 'none' || (this.warmth === 'air' && valueAt(this.spot, 'air_temperature == 20 degC ? 1 : 0') === 1); // prettier-ignore
    return isSame ? [] : [this.line(`at ${this.mild()}`, ages, 'none')];
  }

  private name(): string {
    if (this.warmth === 'log') return 'by the log';
    const air = valueAt(this.spot, 'air_temperature');
    return this.warmth === 'air' && air !== undefined
      ? `at ${this.show.text('air_temperature', air)}`
      : `at ${this.mild()}`;
  }

  private mild(): string {
    return this.show.text('air_temperature', valueAt(this.spot, '20 degC') ?? NaN);
  }

  private strengths(ages: readonly number[], warmth: Warmth): readonly number[] {
    return agesTried(this.spot, ages)
      .run(this.formula(warmth))
      .map((strength) => this.show.in('strength_then', strength));
  }

  private formula(warmth: Warmth): string {
    const since = this.isPost ? 'poured_after' : '0 h';
    const age = {
      log: `equivalent_at_age(temperatures.reading, temperatures.hours, ${since} - log_start, tried_age, activation)`,
      air: 'equivalent_at_age([air_temperature], [1 h], 0 h, tried_age, activation)',
      none: 'tried_age',
    }[warmth];
    return `mix_strength * strength_fraction(${age}, cement)`;
  }

  private whyNot(): string {
    const why = agesTried(this.spot, [HOUR]).whyNot(this.formula(this.warmth));
    return `The strength can’t be drawn yet${why === '' ? '' : `: ${why}`}.`;
  }

  private stretches(reach: number): readonly CurveStretch[] {
    if (this.warmth === 'log') return forecastOf(this.spot, this.isPost ? (valueAt(this.spot, 'poured_after') ?? 0) : 0, reach); // prettier-ignore
    const label = this.warmth === 'air' ? `${this.name().slice(3)}, the day’s mean` : `${this.mild()}, assumed`; // prettier-ignore
    return [{ from: 0, to: reach / HOUR, label }];
  }

  /** Whether frost may spoil it first; it then has no date. */
  private freezes(): boolean {
    return this.isPost && valueAt(this.spot, 'freezes ? 1 : 0') === 1;
  }

  private notes(): readonly string[] {
    const { spot, show } = this;
    const notes: string[] = [];
    const from = this.isPost ? valueAt(spot, 'rehang_after') : undefined;
    if (from !== undefined) notes.push(`Rails from ${show.text('rehang_after', from)}.`);
    if (this.freezes()) notes.push(FREEZES);
    if (this.warmth === 'none' && isStarted(spot)) {
      notes.push(`${LOG_NOT_READ} Drawn for ${this.mild()} throughout, and the strength is not checked.`); // prettier-ignore
    } else if (this.warmth === 'none') {
      notes.push(`No temperature is entered: drawn for ${this.mild()} throughout. Colder takes longer, so the strength is not checked.`); // prettier-ignore
    } else if (this.warmth === 'log') {
      notes.push('The last reading is held on: a forecast, not a promise.');
    }
    return [...notes, CAUTION];
  }
}

function warmthOf(spot: Spot): Warmth {
  if ((valueAt(spot, 'count_where(temperatures.counted)') ?? 0) > 0) return 'log';
  return valueAt(spot, 'air_temperature') === undefined ? 'none' : 'air';
}

function isStarted(spot: Spot): boolean {
  return (valueAt(spot, 'count_where(temperatures.started)') ?? 0) > 0;
}

function agesTried(spot: Spot, ages: readonly number[]): Sweep {
  return new Sweep(spot, [{ name: 'tried_age', kind: quantity(DURATION), values: ages }]);
}

// The ages that are marked are among them, so that a mark stands on its line.
function agesTo(reach: number, stated: readonly { readonly age: number }[]): readonly number[] {
  const even = Array.from({ length: STEPS + 1 }, (_, at) => (reach * at) / STEPS);
  return [...new Set([...even, ...stated.map(({ age }) => age)])].sort((a, b) => a - b);
}
