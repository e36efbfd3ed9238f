import { BLANK, KNOWN, WRONG, worse, type State } from '../graph/index.ts';
import { problem, type Problem } from '../units/index.ts';
import type { AggregateName } from './general.ts';
import { finite, tooLarge } from './large.ts';
import { CANCELLED } from './near.ts';
import type { Node, Trace } from './node.ts';

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
export class Gatherer {
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

/** Why an aggregate has no answer though every value it needs is known. */
export function noAnswer(
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
