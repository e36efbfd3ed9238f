import { afterAll, describe, expect, it, vi } from 'vitest';
import { Program, isFormula } from '../../src/formula/index.ts';
import { ANGLE, FLAG, PLAIN, TEXT, quantity } from '../../src/units/index.ts';
import { Desk } from '../formula/reckon.ts';
import { hostileFormulas } from './formulas.ts';

const POSTS = 10_000;
// About a screenful: each of them tells why it has no value.
const HERE = 30;
const DESK = new Desk({
  here: { x: [PLAIN, numbered(HERE)], y: [quantity(ANGLE), numbered(HERE)] },
  few: { y: [PLAIN, numbered(40)] },
  posts: {
    y: [PLAIN, numbered(POSTS)],
    ok: [FLAG, numbered(POSTS).map((at) => at % 2 === 0)],
    key: [TEXT, numbered(POSTS).map((at) => `k${String(at)}`)],
  },
});
const FORMULAS = hostileFormulas();
// The limit of one formula, and as much again to say why each row has no value.
const MOST_WORK = 2 * 2e7;

let most = { work: 0, of: '' };
// The aim is 100 ms on a machine with nothing else to do; the end of the run tells what it was.
let longest = { time: 0, of: '' };
afterAll(() => {
  process.stdout.write(
    `\n${String(FORMULAS.length)} hostile formulas, each answered. The longest took ${String(Math.round(longest.time))} ms (“${longest.of}”); the most work was ${String(most.work)} values (“${most.of}”).\n`,
  );
});

describe('a formula that means harm', () => {
  it('comes in two hundred ways', () => {
    expect(FORMULAS.length).toBeGreaterThanOrEqual(200);
    expect(new Set(FORMULAS.map(({ formula }) => formula)).size).toBe(FORMULAS.length);
  });

  it.each(FORMULAS)('is answered, in bounded work: $what', ({ what, formula }) => {
    const start = performance.now();
    const { answers, work } = worked(formula);
    const time = performance.now() - start;
    if (work > most.work) most = { work, of: what };
    if (time > longest.time) longest = { time, of: what };
    expect(answers.length).toBeGreaterThan(0);
    for (const answer of answers) {
      expect(answer.trim()).not.toBe('');
      expect(answer.length).toBeLessThan(1500);
    }
    expect(work).toBeLessThanOrEqual(MOST_WORK);
    expect((globalThis as Record<string, unknown>)['ran']).toBeUndefined();
  });
});

/** What a person is answered, and how many values were worked out for it, parts of the formula included. */
function worked(formula: string): { readonly answers: readonly string[]; readonly work: number } {
  const read = DESK.read(formula);
  if (!isFormula(read)) return { answers: [`${read.found} ${read.fix}`], work: 0 };
  let work = 0;
  const run = Reflect.get(Program.prototype, 'run') as (...how: unknown[]) => void;
  const spy = vi.spyOn(Program.prototype, 'run').mockImplementation(function (
    this: Program,
    ...how
  ) {
    for (const node of nodesOf(this)) {
      const fill = node.fill.bind(node);
      node.fill = (from, count) => {
        work += count;
        fill(from, count);
      };
    }
    run.apply(this, how);
  });
  try {
    const answers = DESK.work(formula).map((outcome) => JSON.stringify(outcome));
    return { answers, work };
  } finally {
    spy.mockRestore();
  }
}

interface Filled {
  fill: (from: number, count: number) => void;
}

/** Every part of a compiled formula. */
function nodesOf(program: Program): ReadonlySet<Filled> {
  const nodes = new Set<Filled>();
  const seen = new Set<object>();
  const waiting: unknown[] = [(program as unknown as { node: unknown }).node];
  while (waiting.length > 0) {
    const one = waiting.pop();
    if (typeof one !== 'object' || one === null || ArrayBuffer.isView(one) || seen.has(one))
      continue;
    seen.add(one);
    if ('fill' in one && typeof one.fill === 'function') nodes.add(one as Filled);
    if ('computation' in one) continue;
    waiting.push(...(one instanceof Map ? one.values() : Object.values(one)));
  }
  return nodes;
}

function numbered(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1);
}
