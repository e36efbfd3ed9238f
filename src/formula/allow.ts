import { unitNamed, wordedUnit } from '../units/index.ts';
import { refuseSplitUnit, refuseUnclearDivisor } from './divisor.ts';
import { Places, over, span } from './places.ts';
import { Refused } from './problem.ts';
import type { Arithmetic, Comparison, Syntax } from './syntax.ts';
import type { Token } from './tokens.ts';
import {
  is,
  type AccessorNode,
  type ArrayNode,
  type ConditionalNode,
  type ConstantNode,
  type FunctionNode,
  type MathNode,
  type OperatorNode,
  type ParenthesisNode,
  type RelationalNode,
  type SymbolNode,
} from './tree.ts';

const ARITHMETIC = new Map<string, Arithmetic>([
  ['add', '+'],
  ['subtract', '-'],
  ['multiply', '*'],
  ['divide', '/'],
  ['pow', '^'],
]);

const COMPARISONS = new Map<string, Comparison>([
  ['equal', '=='],
  ['unequal', '!='],
  ['smaller', '<'],
  ['smallerEq', '<='],
  ['larger', '>'],
  ['largerEq', '>='],
]);

/**
 * Turns the parser's tree into the formula language, node by node; throws Refused at anything the
 * language does not have. The tree carries no places, so its leaves are matched in order with the
 * tokens they came from.
 */
export function allow(tree: MathNode, body: readonly Token[]): Syntax {
  return new Walk(body).read(tree);
}

class Walk {
  private readonly places: Places;

  constructor(body: readonly Token[]) {
    this.places = new Places(body);
  }

  read(node: MathNode): Syntax {
    if (is<ParenthesisNode>(node, 'ParenthesisNode')) return this.brackets(node);
    if (is<ConstantNode>(node, 'ConstantNode')) return this.constant(node);
    if (is<SymbolNode>(node, 'SymbolNode')) {
      const leaf = this.places.leaf();
      if (leaf.type !== 'name') throw misread(leaf);
      return { ...span(leaf), form: 'name', name: leaf.text };
    }
    if (is<OperatorNode>(node, 'OperatorNode')) return this.operator(node);
    if (is<ConditionalNode>(node, 'ConditionalNode')) {
      const when = this.read(node.condition);
      const then = this.read(node.trueExpr);
      const otherwise = this.read(node.falseExpr);
      return { ...this.places.over(when, otherwise), form: 'choice', when, then, otherwise };
    }
    if (is<ArrayNode>(node, 'ArrayNode')) return this.list(node);
    if (is<AccessorNode>(node, 'AccessorNode')) return this.member(node);
    if (is<FunctionNode>(node, 'FunctionNode')) return this.call(node);
    if (is<RelationalNode>(node, 'RelationalNode')) return this.chain(node);
    throw this.refuse(node);
  }

  private brackets({ content }: ParenthesisNode): Syntax {
    const inside = this.read(content);
    const whole = { ...inside };
    this.places.bracket(whole, this.places.widened(this.places.outer(inside), '(', ')'));
    return whole;
  }

  private constant({ value }: ConstantNode): Syntax {
    const leaf = this.places.leaf();
    const place = span(leaf);
    if (typeof value === 'string' && leaf.type === 'text') return { ...place, form: 'text', value };
    if (typeof value === 'boolean' && leaf.type === 'name')
      return { ...place, form: 'flag', value };
    if (leaf.type !== 'number' || value !== Number(leaf.text)) throw misread(leaf);
    return { ...place, form: 'number', value };
  }

  private list({ items: nodes }: ArrayNode): Syntax {
    const items = nodes.map((item) => this.read(item));
    const [first] = items;
    const last = items.at(-1);
    const place =
      first && last
        ? this.places.widened(this.places.over(first, last), '[', ']')
        : this.places.emptyList();
    return { ...place, form: 'list', items };
  }

  private member(node: AccessorNode): Syntax {
    if (!node.index.dotNotation) {
      throw new Refused(
        this.places.here(),
        'Items are not picked by their place.',
        'Use pick or value_for.',
      );
    }
    if (!is<SymbolNode>(node.object, 'SymbolNode')) throw this.refuse(node);
    const sheet = this.places.leaf();
    const column = this.places.leaf();
    return { ...over(sheet, column), form: 'member', sheet: sheet.text, column: column.text };
  }

  private call(node: FunctionNode): Syntax {
    if (!is<SymbolNode>(node.fn, 'SymbolNode')) throw this.refuse(node);
    const name = this.places.leaf();
    if (unitNamed(name.text) && name.text !== 'min') {
      throw new Refused(
        name,
        `“${name.text}” is a unit, not a function.`,
        'Write * before the bracket.',
      );
    }
    const given = node.args.map((argument) => this.read(argument));
    const last = given.at(-1);
    const closed = last ? this.places.after(this.places.outer(last)) : this.places.closing(name);
    return {
      ...over(name, closed ?? name),
      form: 'call',
      name: name.text,
      nameSpan: span(name),
      arguments: given,
    };
  }

  private operator(node: OperatorNode): Syntax {
    const name = node.fn;
    const [first, second] = node.args;
    if (!first) throw this.refuse(node);
    if (node.implicit) return this.measure(node);
    if (!second) return this.unary(name, first, node);
    const left = this.read(first);
    const lastOfLeft = this.places.lastLeaf();
    const right = this.read(second);
    const place = this.places.over(left, right);
    const arithmetic = ARITHMETIC.get(name);
    if (arithmetic !== undefined) {
      if (arithmetic === '/') refuseUnclearDivisor(first, second, right, lastOfLeft);
      if (arithmetic === '*' || arithmetic === '/') refuseSplitUnit(first, second, place);
      return { ...place, form: 'arithmetic', sign: arithmetic, left, right };
    }
    const comparison = COMPARISONS.get(name);
    if (comparison !== undefined) {
      if (is<OperatorNode>(first, 'OperatorNode') && first.fn === 'not') {
        throw new Refused(
          place,
          '“not” here belongs to the left side only.',
          'Write != to compare, or put brackets.',
        );
      }
      return { ...place, form: 'comparison', sign: comparison, left, right };
    }
    if (name === 'and') return { ...place, form: 'both', left, right };
    if (name === 'or') return { ...place, form: 'either', left, right };
    throw this.refuse(node);
  }

  private unary(name: string, operand: MathNode, node: OperatorNode): Syntax {
    const of = this.read(operand);
    const around = this.places.outer(of);
    const place = over(this.places.before(around) ?? around, around);
    if (name === 'unaryMinus') {
      if (of.form === 'number') return { ...of, ...place, value: -of.value };
      return { ...place, form: 'negative', of };
    }
    if (name === 'unaryPlus') return of;
    if (name === 'not') return { ...place, form: 'not', of };
    throw this.refuse(node);
  }

  private chain({ params }: RelationalNode): never {
    const terms = params.map((term) => this.read(term));
    const [first] = terms;
    const place = first ? this.places.over(first, terms.at(-1) ?? first) : this.places.here();
    throw new Refused(place, 'Comparisons do not chain.', 'Write a < b and b < c.');
  }

  // Number and unit side by side: the one product that needs no sign.
  private measure(node: OperatorNode): Syntax {
    const start = this.places.mark();
    const [number, unit] = node.args;
    const value = number && this.literal(number);
    const leaf = this.places.nextLeaf();
    const exponent = unit && this.unitPower(unit);
    if (value === undefined || exponent === undefined || !leaf) {
      this.places.back(start);
      throw this.sideBySide(node);
    }
    const first = span(this.places.leafAt(start) ?? leaf);
    const sign = this.places.before(first);
    const isSigned = sign !== undefined && number && isUnary(number);
    const place = over(isSigned ? sign : first, this.places.lastLeaf() ?? leaf);
    if (!Number.isFinite(value))
      throw new Refused(place, 'This divides by zero.', 'Write another number.');
    return { ...place, form: 'measure', value, unit: leaf.text, exponent };
  }

  private sideBySide(node: OperatorNode): Refused {
    const [first, second] = node.args.map((each) => this.read(each));
    const place = first && second ? this.places.over(first, second) : this.places.here();
    const name = second?.form === 'name' ? second.name : '';
    const meant = wordedUnit(name);
    if (first?.form === 'number' && meant && !unitNamed(name)) {
      return new Refused(place, `“${name}” is not a unit here.`, `Write ${meant.symbol}.`);
    }
    const found =
      name === '' || unitNamed(name)
        ? 'Two things side by side are not multiplied here.'
        : `“${name}” is not a unit, and two things side by side are not multiplied here.`;
    return new Refused(place, found, 'Write * between them.');
  }

  private literal(node: MathNode): number | undefined {
    if (is<ConstantNode>(node, 'ConstantNode')) {
      return typeof node.value === 'number' ? Number(this.places.leaf().text) : undefined;
    }
    if (!is<OperatorNode>(node, 'OperatorNode') || node.implicit) return undefined;
    const [first, second] = node.args;
    const name = node.fn;
    const left = first && this.literal(first);
    if (left === undefined) return undefined;
    if (name === 'unaryMinus') return -left;
    if (name === 'unaryPlus') return left;
    if (name !== 'divide' || !second || !is<ConstantNode>(second, 'ConstantNode')) return undefined;
    if (first && is<OperatorNode>(first, 'OperatorNode') && first.fn === 'divide') return undefined;
    const right = this.literal(second);
    return right === undefined ? undefined : left / right;
  }

  private unitPower(node: MathNode): number | undefined {
    if (is<SymbolNode>(node, 'SymbolNode')) {
      return unitNamed(this.places.leaf().text) ? 1 : undefined;
    }
    if (!is<OperatorNode>(node, 'OperatorNode') || node.fn !== 'pow') return undefined;
    const [base, exponent] = node.args;
    if (!base || !exponent || this.unitPower(base) !== 1) return undefined;
    return this.literal(exponent);
  }

  private refuse(node: MathNode): Refused {
    const [found, fix] = REFUSED.get(node.type) ?? [
      'This is not part of the formula language.',
      'Take it out.',
    ];
    return new Refused(
      node.type === 'RangeNode' ? this.places.here() : this.places.dotted(),
      found,
      fix,
    );
  }
}

const REFUSED = new Map<string, readonly [string, string]>([
  ['RangeNode', ['Ranges, with “:”, are not part of a formula.', 'Write a list: [a, b].']],
  [
    'AccessorNode',
    [
      'Only sheet.column may be written with a point.',
      'Write sheet.column, or a bare column name.',
    ],
  ],
  [
    'FunctionNode',
    ['Only a function by its name may be called.', 'Write name(...), or * before the bracket.'],
  ],
]);

function isUnary(node: MathNode): boolean {
  if (!is<OperatorNode>(node, 'OperatorNode')) return false;
  const [first] = node.args;
  return node.args.length === 1 || (first !== undefined && isUnary(first));
}

// The parser took the piece for something else: better no formula than another one.
function misread(leaf: Token): Refused {
  return new Refused(leaf, `“${leaf.text}” can't be read here.`, 'Write it more simply.');
}
