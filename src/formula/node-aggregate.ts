import { BLANK, KNOWN, WRONG, worse, type Rows, type State } from '../graph/index.ts';
import { problem, type Problem } from '../units/index.ts';
import type { AggregateName } from './general.ts';
import { finite, tooLarge } from './large.ts';
import { CANCELLED } from './near.ts';
import { CHUNK, Node, type Trace } from './node.ts';
import type { OutsideNode } from './node-column.ts';
import { needingAll } from './node-operands.ts';

/** The part of an aggregate that goes over one band of rows. */
export interface Band {
  readonly rows: Rows;
  /** The arguments, compiled for this band's rows. */
  readonly given: readonly Node[];
}

/** An aggregate over the rows of a sheet; inside it, values of the row outside hold still. */
export class AggregateNode extends Node {
  protected readonly outside: readonly OutsideNode[];
  protected filled = 0;
  private readonly name: AggregateName;
  private readonly bands: readonly Band[];
  private readonly isSame: boolean;
  private readonly keyText: KeyText;
  private once: Gatherer | undefined;
  private told: Trace | undefined;

  /** `isSame`: nothing inside varies with the row outside, so one answer serves all rows. */
  constructor(
    name: AggregateName,
    bands: readonly Band[],
    outside: readonly OutsideNode[],
    isSame: boolean,
    keyText: KeyText,
  ) {
    super(outside.map(({ of }) => of));
    this.name = name;
    this.bands = bands;
    this.outside = outside;
    this.isSame = isSame;
    this.keyText = keyText;
  }

  override get keeps(): boolean {
    return true;
  }

  override get choosy(): readonly Node[] {
    return [];
  }

  override work(count: number): number {
    const once = this.inside((node, rows) => node.work(rows));
    return super.work(count) + once * (this.isSame ? 1 : count);
  }

  override repeatedWork(count: number): number {
    const inside = this.isSame
      ? this.inside((node, rows) => node.repeatedWork(rows))
      : this.inside((node, rows) => node.work(rows)) * count;
    return super.repeatedWork(count) + inside;
  }

  private inside(measure: (node: Node, rows: number) => number): number {
    return this.bands.reduce(
      (sum, { rows, given }) =>
        given.reduce((inner, node) => inner + measure(node, rows.count), sum),
      0,
    );
  }

  override restart(): void {
    super.restart();
    this.once = undefined;
    this.told = undefined;
    for (const { given } of this.bands) for (const node of given) node.restart();
  }

  override fill(from: number, count: number): void {
    this.filled = count;
    for (const { of } of this.outside) of.fill(from, count);
    if (this.isSame) {
      this.once ??= this.gathered(0);
      this.holdStill(this.once.result);
    } else {
      const data = this.hold(count);
      for (let i = 0; i < count; i++) data[i] = this.gathered(i).result;
    }
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    // Asked again for row after row, one answer for all rows is neither worked out nor told twice.
    const isAsked = trace !== undefined && !(this.isSame && this.told === trace);
    this.told = trace;
    // With every row known, none of them has more to say.
    const isGathered = isAsked && !(this.isSame && this.once?.state === KNOWN);
    const gatherer = isGathered ? this.gathered(Math.min(i, this.filled), trace) : this.known(i);
    if (gatherer.state !== KNOWN) return gatherer.state;
    if (isAsked) trace.wrong(noAnswer(this.name, gatherer, this.keyText));
    return WRONG;
  }

  private known(i: number): Gatherer {
    return (this.isSame ? this.once : undefined) ?? this.gathered(Math.min(i, this.filled));
  }

  private gathered(i: number, trace?: Trace): Gatherer {
    for (const outside of this.outside) outside.take(i);
    const gatherer = new Gatherer(this.name);
    for (const { rows, given } of this.bands) {
      for (let from = 0; from < rows.count; from += CHUNK) {
        const count = Math.min(CHUNK, rows.count - from);
        for (const node of given) node.fill(from, count);
        gatherer.take(given, count, trace);
        if (gatherer.isDecided || (trace && gatherer.isWrong)) return gatherer;
        if (trace?.isEnough?.() === true) return gatherer;
      }
    }
    return gatherer;
  }
}

/** The aggregate of a few values written out, as in `max(a, b)`. */
export class FewNode extends Node {
  private readonly name: AggregateName;

  constructor(name: AggregateName, given: readonly Node[]) {
    super(given);
    this.name = name;
  }

  protected override combine(count: number): void {
    const data = this.hold(count);
    if (this.name === 'min' || this.name === 'max') this.fillExtreme(data, count, this.name);
    else for (let i = 0; i < count; i++) data[i] = this.gathered(i).result;
  }

  override stated(count: number): Uint8Array {
    if (this.name !== 'min' && this.name !== 'max') return super.stated(count);
    return needingAll(this, this.parts, this.room(), count);
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    const gatherer = this.gathered(i, trace);
    if (gatherer.state !== KNOWN) return gatherer.state;
    trace?.wrong(noAnswer(this.name, gatherer));
    return WRONG;
  }

  // By far the commonest; no object is made a row.
  private fillExtreme(data: Float64Array, count: number, name: 'min' | 'max'): void {
    this.parts.forEach(({ data: from, at, mask }, place) => {
      for (let i = 0; i < count; i++) {
        const value = from[at + (i & mask)] as number;
        const best = data[i] as number;
        // One that is not known leaves none known.
        const isTaken =
          place === 0 || value !== value || (name === 'min' ? value < best : value > best);
        if (isTaken) data[i] = value;
      }
    });
  }

  private gathered(i: number, trace?: Trace): Gatherer {
    const gatherer = new Gatherer(this.name);
    for (const node of this.parts) gatherer.takeOne([node], i, trace);
    return gatherer;
  }
}

// Those that take every value alike.
const PLAIN_ONES: ReadonlySet<AggregateName> = new Set([
  'sum',
  'min',
  'max',
  'mean',
  'count',
  'count_where',
  'any',
  'all',
]);

/** The text of a key by its number; undefined where keys are no texts. */
export type KeyText = (key: number) => string | undefined;

/** Takes values one by one and keeps what the aggregate needs of them. */
class Gatherer {
  /** How many were taken into account. */
  count = 0;
  /** The key that `value_for` looks for; not a number while there was no row to look at. */
  wanted = NaN;
  private readonly name: AggregateName;
  private worst: State = KNOWN;
  private total = 0;
  private largest = 0;
  private least = Infinity;
  private greatest = -Infinity;
  private firstValue = NaN;
  private trues = 0;
  private falses = 0;
  private rows = 0;

  constructor(name: AggregateName) {
    this.name = name;
  }

  /** Whether no further row could change the answer, nor the reason for having none. */
  get isDecided(): boolean {
    if (this.name === 'any') return this.trues > 0;
    if (this.name === 'all') return this.falses > 0;
    return this.name === 'first' && this.rows > 0;
  }

  /** Whether a row was wrong whose reason stands for all: nothing worse can come. */
  get isWrong(): boolean {
    return this.worst === WRONG && this.name !== 'any' && this.name !== 'all';
  }

  take(given: readonly Node[], count: number, trace: Trace | undefined): void {
    const [first] = given;
    if (first && PLAIN_ONES.has(this.name)) this.takeValues(first, 0, count, trace);
    else for (let i = 0; i < count; i++) this.takeOne(given, i, trace);
  }

  takeOne(given: readonly Node[], i: number, trace: Trace | undefined): void {
    const [first, second, third] = given;
    if (!first) return;
    this.rows += 1;
    if (this.name === 'pick') this.choose(second, 1, first, i, trace);
    else if (this.name === 'value_for' && second && third) {
      this.wanted = first.value(i);
      this.choose(second, this.wanted, third, i, trace, first);
    } else if (this.name !== 'first' || this.rows === 1) this.takeValues(first, i, i + 1, trace);
  }

  get state(): State {
    if (this.name === 'any' && this.trues > 0) return KNOWN;
    if (this.name === 'all' && this.falses > 0) return KNOWN;
    return this.worst;
  }

  get result(): number {
    if (this.state !== KNOWN) return NaN;
    switch (this.name) {
      case 'sum':
        return Math.abs(this.total) <= CANCELLED * this.largest ? 0 : finite(this.total);
      case 'mean':
        return this.count === 0 ? NaN : finite(this.total / this.count);
      case 'min':
        return finite(this.least);
      case 'max':
        return finite(this.greatest);
      case 'count':
        return this.count;
      case 'count_where':
        return this.trues;
      case 'any':
        return this.trues > 0 ? 1 : 0;
      case 'all':
        return this.falses > 0 ? 0 : 1;
      case 'first':
        return this.firstValue;
      case 'pick':
      case 'value_for':
        return this.count === 1 ? this.firstValue : NaN;
    }
  }

  private takeValues(node: Node, from: number, to: number, trace: Trace | undefined): void {
    const { data, at, mask } = node;
    let { count, total, largest, least, greatest, falses } = this;
    for (let i = from; i < to; i++) {
      const value = data[at + (i & mask)] as number;
      if (value !== value) {
        const state = node.trace(i, trace);
        // A blank is not given, so it does not count; anything unsettled might.
        if (this.name !== 'count' || state !== BLANK) this.worst = worse(this.worst, state);
        continue;
      }
      if (count === 0) this.firstValue = value;
      count += 1;
      total += value;
      const size = Math.abs(value);
      if (size > largest) largest = size;
      if (value < least) least = value;
      if (value > greatest) greatest = value;
      if (value === 0) falses += 1;
    }
    this.trues += count - this.count - (falses - this.falses);
    this.count = count;
    this.total = total;
    this.largest = largest;
    this.least = least;
    this.greatest = greatest;
    this.falses = falses;
  }

  // pick and value_for: the value of the rows where the key is the wanted one.
  private choose(
    keys: Node | undefined,
    wanted: number,
    values: Node,
    i: number,
    trace: Trace | undefined,
    wantedFrom?: Node,
  ): void {
    if (!keys) return;
    if (wanted !== wanted) {
      this.worst = worse(this.worst, wantedFrom?.trace(i, trace) ?? BLANK);
      return;
    }
    const key = keys.value(i);
    if (key !== key) {
      // A row without a key is nobody's; a flag that is not known might be the one.
      if (this.name === 'pick') this.worst = worse(this.worst, keys.trace(i, trace));
      return;
    }
    if (key !== wanted) return;
    this.count += 1;
    this.firstValue = values.value(i);
    if (!values.knows(i)) this.worst = worse(this.worst, values.trace(i, trace));
  }
}

function noAnswer(
  name: AggregateName,
  { count, wanted }: Gatherer,
  keyText: KeyText = () => undefined,
): Problem {
  const key = wanted === wanted ? keyText(wanted) : undefined;
  const quoted = key === undefined ? '' : `: “${key}”`;
  switch (name) {
    case 'pick':
      return count === 0
        ? problem(name, 'No row is picked.', 'Choose one row.')
        : problem(name, `${String(count)} rows are picked.`, 'Choose one row only.');
    case 'value_for':
      return count === 0
        ? problem(
            name,
            `No row has this key${quoted}.`,
            'Choose one that stands on the sheet, or add a row for it.',
          )
        : problem(
            name,
            `${String(count)} rows have this key${quoted}.`,
            'Give each row a key of its own.',
          );
    case 'sum':
      return tooLarge(name);
    default:
      return problem(name, 'There are no rows to take it from.', 'Add a row.');
  }
}
