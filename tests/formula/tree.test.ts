import { array, assert, constantFrom, property } from 'fast-check';
import { create, parseDependencies } from 'mathjs/number';
import { describe, expect, it } from 'vitest';
import { readTree } from '../../src/formula/read-tree.ts';

// The parser as its package builds it, with its own nodes, decides what a tree has to be.
const { parse } = create(parseDependencies ?? {});

/** A tree as plain lists, whichever nodes it is made of. */
function plain(node: unknown): unknown {
  const { type, ...fields } = node as { readonly type: string } & Record<string, unknown>;
  switch (type) {
    case 'ConstantNode':
      return fields['value'];
    case 'SymbolNode':
      return [type, fields['name']];
    case 'OperatorNode':
      return [type, fields['op'], fields['fn'], fields['implicit'], all(fields['args'])];
    case 'ParenthesisNode':
      return [type, plain(fields['content'])];
    case 'ConditionalNode':
      return [type, all([fields['condition'], fields['trueExpr'], fields['falseExpr']])];
    case 'RelationalNode':
      return [type, all(fields['params'])];
    case 'ArrayNode':
      return [type, all(fields['items'])];
    case 'AccessorNode':
      return [type, all([fields['object'], fields['index']])];
    case 'IndexNode':
      return [type, fields['dotNotation'], all(fields['dimensions'])];
    case 'FunctionNode':
      return [type, plain(fields['fn']), all(fields['args'])];
    case 'RangeNode':
      return [type];
    default:
      throw new Error(`No formula leads to ${type}.`);
  }
}

function all(nodes: unknown): unknown {
  return (nodes as readonly unknown[]).map(plain);
}

function outcome(read: (text: string) => unknown, text: string): unknown {
  try {
    return plain(read(text));
  } catch (error) {
    return ['refused', (error as { readonly char?: number }).char];
  }
}

const FORMULAS = [
  '7.79 ft + 3 iN^2 / 2 yd^3 * -15 degC',
  'a < b ? max([a, b, 1.5e-3]) : -(x ^ 2)',
  'not a and b == "firm" or holes.depth >= 2',
  'sum(holes.width > 1 ft ? holes.concrete : 0 ft^3)',
  'a < b < c',
  'a[1].b(2)',
  'true ? 1/2 iN : .5',
  'x:y',
];

const PIECES = [
  ...['a', 'ft', 'iN', 'sum', 'holes', 'true', 'and', 'or', 'not', '"firm"', "'x'"],
  ...['1', '2.5', '.5', '3.', '1e3', '(', ')', '[', ']', ',', '.', '?', ':'],
  ...['+', '-', '*', '/', '^', '==', '!=', '<', '<=', '>', '>='],
];

describe('the tree of a formula', () => {
  it.each(FORMULAS)('is what the parser makes with its own nodes: %s', (text) => {
    expect(plain(readTree(text))).toEqual(plain(parse(text)));
  });

  it('is so, or is refused at the same character, for any pieces in a row', () => {
    assert(
      property(array(constantFrom(...PIECES), { minLength: 1, maxLength: 12 }), (pieces) => {
        const text = pieces.join(' ');
        expect(outcome(readTree, text)).toEqual(outcome(parse as (text: string) => unknown, text));
      }),
      { numRuns: 3000 },
    );
  });
});
