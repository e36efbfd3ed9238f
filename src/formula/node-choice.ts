import { KNOWN, type State } from '../graph/index.ts';
import { ALL_KNOWN, CHUNK, Node, type Trace } from './node.ts';

// In place of 1 where rows end at a node that has one value for all.
const STILL = 2;

/** A condition, and what a row comes to where it is the first that is true. */
export interface Branch {
  readonly when: Node;
  readonly then: Node;
}

/**
 * `a ? b : c`, and `a ? b : c ? d : e` as one. What no row of a fill comes to is not needed, and not worked out.
 *
 * Each row ends at one node, which has its value: the branch it takes, or the condition that is not known.
 */
export class ChoiceNode extends Node {
  protected override readonly isChooser = true;
  private readonly whens: readonly Node[];
  /** The branch of each condition, and last what is left where none is true. */
  private readonly branches: readonly Node[];
  private readonly isWhole: boolean;
  /** Where each row of the last fill ends, and whether any row ends at a node. */
  private end = new Int16Array(0);
  private readonly isEnd: Uint8Array;
  /** The value of each node where rows end that has one for all of them. */
  private readonly still: Float64Array;
  /** The rows that no condition was true of so far. */
  private left = new Int16Array(0);

  /** `isWhole`: everything is worked out in any case, for somebody who wants to see it. */
  constructor(choices: readonly Branch[], otherwise: Node, isWhole: boolean) {
    const whens = choices.map(({ when }) => when);
    const branches = [...choices.map(({ then }) => then), otherwise];
    super([...whens, ...branches]);
    this.whens = whens;
    this.branches = branches;
    this.isEnd = new Uint8Array(this.parts.length);
    this.still = new Float64Array(this.parts.length);
    this.isWhole = isWhole;
  }

  override fill(from: number, count: number): void {
    const { parts: ends, isEnd, isWhole, whens, branches, lookedAt } = this;
    this.choose(from, count);
    const { end } = this;
    branches.forEach((branch, at) => {
      const mark = whens.length + at;
      if (isWhole) branch.fill(from, count);
      else if (isEnd[mark])
        branch.fillWhere(from, count, { data: end, at: 0, mask: -1 }, mark, lookedAt);
    });
    const first = end[0] as number;
    const only = ends[first];
    // Where all rows end alike, the value is read where it stands.
    if (only && isEnd.indexOf(1) === first && isEnd.lastIndexOf(1) === first) {
      this.stand(only);
      return;
    }
    const data = this.hold(count);
    for (let at = 0; at < ends.length; at++) {
      if (isEnd[at] === 0) continue;
      const { data: values, at: p, mask } = ends[at] as Node;
      this.still[at] = values[p] as number;
      if (mask === 0) isEnd[at] = STILL;
    }
    const { still } = this;
    // Most branches are one text or number: their rows are done in one go, and of the others each by itself.
    for (let i = 0; i < count; i++) data[i] = still[end[i] as number] as number;
    for (let at = 0; at < ends.length; at++) {
      if (isEnd[at] !== 1) continue;
      const { data: values, at: p } = ends[at] as Node;
      for (let i = 0; i < count; i++) if (end[i] === at) data[i] = values[p + i] as number;
    }
  }

  override stated(count: number): Uint8Array {
    if (this.knowsAll(count)) return ALL_KNOWN;
    const states = this.room();
    const found = this.parts.map((node, at) => (this.isEnd[at] ? node.stated(count) : ALL_KNOWN));
    for (let i = 0; i < count; i++) states[i] = found[this.end[i] as number]?.[i] ?? KNOWN;
    return states;
  }

  trace(i: number, trace?: Trace): State {
    return this.knows(i) ? KNOWN : (this.parts[this.end[i] as number]?.trace(i, trace) ?? KNOWN);
  }

  /** Finds where each row ends. */
  private choose(from: number, count: number): void {
    const { whens, isEnd, isWhole } = this;
    if (this.end.length < count) {
      const room = Math.min(CHUNK, 2 * count);
      [this.end, this.left] = [new Int16Array(room), new Int16Array(room)];
    }
    const { end, left } = this;
    isEnd.fill(0);
    for (let i = 0; i < count; i++) left[i] = i;
    let waiting = count;
    for (let at = 0; at < whens.length && (waiting > 0 || isWhole); at++) {
      const when = whens[at] as Node;
      when.fill(from, count);
      const { data, at: start, mask } = when;
      // The commonest: nothing of the kind was typed, and it is true of none.
      if (when.isStill && data[start] === 0) continue;
      let still = 0;
      let trues = 0;
      for (let k = 0; k < waiting; k++) {
        const i = left[k] as number;
        const flag = data[start + (i & mask)] as number;
        // Numbers instead of branches: no processor guesses the next row right. Unknown is 0 here, and ends at the condition.
        const isTrue = flag | 0;
        end[i] = at + isTrue * whens.length;
        left[still] = i;
        still += Number(flag === 0);
        trues += isTrue;
      }
      if (trues > 0) isEnd[whens.length + at] = 1;
      if (still + trues < waiting) isEnd[at] = 1;
      waiting = still;
    }
    const last = whens.length + whens.length;
    if (waiting > 0) isEnd[last] = 1;
    for (let k = 0; k < waiting; k++) end[left[k] as number] = last;
  }
}
