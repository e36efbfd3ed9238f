import { LENGTH, quantity } from '../units/index.ts';
import type { Engine } from './engine.ts';
import type { CurveLine, CurveMark, CurveView } from './curve-view.ts';
import { Measures } from './measures.ts';
import { Sweep, valueAt } from './sweep.ts';
import { spotOf } from './working.ts';
import type { Spot } from './working-steps.ts';
import type { Notebook } from '../notebook/index.ts';

const WIDTH = 'hole_shape == "square" ? square_width(tried_width) : tried_width';
const IN_SOIL = `lateral_capacity(tried_depth, posts.wind_arm, ${WIDTH}, ground_bearing)`;
// Any bearing would do: it stands above and below the line.
const OF_WANTED = `lateral_capacity(tried_depth, posts.wind_arm, ${WIDTH}, 150 psf/ft) / lateral_capacity(embedment, posts.wind_arm, wanted_width, 150 psf/ft)`;

const STEPS = 40;
/** How far past the deepest that matters the curve is drawn. */
const BEYOND = 1.2;
/** Where no depth is known. [m] */
const ORDINARY_DEPTH = 1.2;
const CAUTION =
  'Allowable, for a post free to turn at grade. Local code and a licensed engineer decide.';

/** What the ground holds against the depth of a hole, at its width and two others; undefined where the row has no hole. */
export function capacityCurve(
  row: string,
  engine: Engine,
  notebook: Notebook,
): CurveView | undefined {
  const spot = spotOf({ sheet: 'holes', row }, engine, notebook);
  return spot && new Capacity(spot).view();
}

/** A depth at a width that is marked. */
interface Place {
  readonly depth: number;
  readonly width: number;
  readonly label: string;
}

class Capacity {
  private readonly spot: Spot;
  private readonly show: Measures;
  /** Whether the soil is known; else capacity is a share of what the wanted hole holds. */
  private readonly inSoil: boolean;

  constructor(spot: Spot) {
    this.spot = spot;
    this.show = new Measures(spot);
    this.inSoil = valueAt(spot, 'ground_bearing') !== undefined;
  }

  view(): CurveView {
    const widths = this.widths();
    const places = this.places();
    const depths = depthsTo(this.deepest(places), places);
    const lines = widths.map((width, at) => this.line(width, depths, at === 0));
    const drawn = lines.filter(({ points }) => points.length > 1);
    const waits = drawn.length === 0 ? this.whyNot() : '';
    return {
      heading: this.inSoil ? 'What the ground holds' : 'What the ground holds, of what is wanted',
      x: {
        label: 'Depth in the ground',
        unit: this.show.unit('embedment'),
        from: 0,
        ...(this.show.unit('embedment') === 'in' ? { steps: [6, 12, 24, 48, 96] } : {}),
      },
      y: this.inSoil
        ? { label: 'Sideways force', unit: this.show.unit('capacity'), from: 0 }
        : { label: 'Share of the wanted hole', unit: '%', from: 0 },
      lines: drawn,
      marks: drawn.length === 0 ? [] : places.flatMap((place) => this.mark(place)),
      levels: this.levels(),
      stretches: [],
      waits,
      notes: drawn.length === 0 ? [] : this.notes(),
    };
  }

  /** The row's width first, then a narrower and a wider one; the job's is among them. [m] */
  private widths(): readonly number[] {
    const [own, job] = [valueAt(this.spot, 'width'), valueAt(this.spot, 'job.hole_width')];
    if (own === undefined) return [];
    const step = this.show.unit('width') === 'in' ? '1 in' : '25 mm';
    const near = (share: string) =>
      valueAt(this.spot, `round(${share} * width / (${step})) * ${step}`);
    const narrower = job !== undefined && job < own ? job : near('2 / 3');
    const wider = job !== undefined && job > own ? job : near('3 / 2');
    return [own, narrower, wider].filter((width) => width !== undefined);
  }

  private places(): readonly Place[] {
    const { spot, show } = this;
    const [own, job] = [valueAt(spot, 'width'), valueAt(spot, 'job.hole_width')];
    const wanted = valueAt(spot, 'embedment');
    const dug = valueAt(spot, 'only_if(depth - gravel, depth_reached > 0 in)');
    const wind = this.inSoil ? valueAt(spot, 'posts.ground_and_wind') : undefined;
    const places: Place[] = [];
    if (dug !== undefined && own !== undefined) {
      places.push({ depth: dug, width: own, label: `${show.text('embedment', dug)} dug` });
    }
    if (wanted !== undefined && job !== undefined) {
      const enough = wind !== undefined && isNear(wanted, wind) ? ', holds the wind' : '';
      places.push({
        depth: wanted,
        width: job,
        label: `${show.text('embedment', wanted)} wanted${enough}`,
      });
    }
    if (
      wind !== undefined &&
      job !== undefined &&
      !(wanted !== undefined && isNear(wanted, wind))
    ) {
      places.push({
        depth: wind,
        width: job,
        label: `${show.text('embedment', wind)} holds the wind`,
      });
    }
    return places;
  }

  private deepest(places: readonly Place[]): number {
    const depths = places.map(({ depth }) => depth).filter((depth) => depth > 0);
    return depths.length === 0 ? ORDINARY_DEPTH : BEYOND * Math.max(...depths);
  }

  private line(width: number, depths: readonly number[], isOwn: boolean): CurveLine {
    const held = this.held(
      depths,
      depths.map(() => width),
    );
    const points = depths.map((depth, at) => [this.show.in('embedment', depth), held[at] ?? NaN] as const); // prettier-ignore
    return {
      name: isOwn
        ? `${this.show.text('embedment', width)} wide`
        : this.show.text('embedment', width),
      points: points.filter(([, force]) => !Number.isNaN(force)),
    };
  }

  private mark({ depth, width, label }: Place): readonly CurveMark[] {
    const [y = NaN] = this.held([depth], [width]);
    return Number.isNaN(y) ? [] : [{ x: this.show.in('embedment', depth), y, label }];
  }

  /** In the unit of the axis; NaN where the rule has no answer. */
  private held(depths: readonly number[], widths: readonly number[]): readonly number[] {
    const forces = sweepOf(this.spot, depths, widths).run(this.inSoil ? IN_SOIL : OF_WANTED);
    return forces.map((force) => (this.inSoil ? this.show.in('capacity', force) : force * 100));
  }

  private whyNot(): string {
    const width = valueAt(this.spot, 'width');
    const why = sweepOf(this.spot, [ORDINARY_DEPTH], [width ?? ORDINARY_DEPTH]).whyNot(
      width === undefined ? 'width' : this.inSoil ? IN_SOIL : OF_WANTED,
    );
    return `The ground’s hold can’t be drawn yet${why === '' ? '' : `: ${why}`}.`;
  }

  private levels() {
    const wind = this.inSoil ? valueAt(this.spot, 'wind_force') : undefined;
    if (wind === undefined) return [];
    return [{ y: this.show.in('capacity', wind), label: `wind asks ${this.show.text('wind_force', wind)}` }]; // prettier-ignore
  }

  private notes(): readonly string[] {
    const { spot, show } = this;
    const notes: string[] = [];
    if (!this.inSoil) {
      notes.push('No soil is entered: drawn as a share of what the wanted hole holds, in which the soil cancels out.'); // prettier-ignore
    } else if (valueAt(spot, 'wind_force') === undefined) {
      const why = new Sweep(spot, []).whyNot('wind_force');
      notes.push(`What the wind asks is not known${why === '' ? '' : `: ${why}`}.`);
    }
    const equal = valueAt(spot, 'equal_width');
    const wanted = valueAt(spot, 'embedment');
    if (equal !== undefined && wanted !== undefined) {
      notes.push(`Width does not replace depth: to hold as much without the missing depth, it would have to be ${show.text('embedment', equal)} wide.`); // prettier-ignore
    } else notes.push(...this.compared());
    return [...notes, CAUTION];
  }

  /** What half as much again brings, in width and in depth. */
  private compared(): readonly string[] {
    const times = (depth: string, width: string) =>
      valueAt(
        this.spot,
        `lateral_capacity(${depth}, posts.wind_arm, ${width}, 150 psf/ft) / lateral_capacity(embedment, posts.wind_arm, wanted_width, 150 psf/ft)`,
      );
    const [wider, deeper] = [
      times('embedment', '1.5 * wanted_width'),
      times('1.5 * embedment', 'wanted_width'),
    ];
    if (wider === undefined || deeper === undefined) return [];
    return [`Half as wide again holds ${wider.toFixed(1)} times as much; half as deep again, ${deeper.toFixed(1)} times.`]; // prettier-ignore
  }
}

function sweepOf(spot: Spot, depths: readonly number[], widths: readonly number[]): Sweep {
  return new Sweep(spot, [
    { name: 'tried_depth', kind: quantity(LENGTH), values: depths },
    { name: 'tried_width', kind: quantity(LENGTH), values: widths },
  ]);
}

// The depths that are marked are among them, so that a mark stands on its line.
function depthsTo(deepest: number, places: readonly Place[]): readonly number[] {
  const even = Array.from({ length: STEPS }, (_, at) => (deepest * (at + 1)) / STEPS);
  const marked = places.map(({ depth }) => depth).filter((depth) => depth > 0);
  return [...new Set([...even, ...marked])].sort((a, b) => a - b);
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-9 * Math.max(a, b);
}
