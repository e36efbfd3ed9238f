import { KNOWN, WRONG, type Rows, type State } from '../graph/index.ts';
import { Gatherer, noAnswer, type KeyText } from './gather.ts';
import type { AggregateName } from './general.ts';
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
