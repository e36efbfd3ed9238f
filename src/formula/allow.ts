import type {
  AccessorNode,
  ArrayNode,
  ConditionalNode,
  ConstantNode,
  FunctionNode,
  IndexNode,
  MathNode,
  OperatorNode,
  ParenthesisNode,
  SymbolNode,
} from 'mathjs/number';
import { unitNamed } from '../units/index.ts';
import { Refused, type Span } from './problem.ts';
import type { Arithmetic, Comparison, Syntax } from './syntax.ts';
import type { Token } from './tokens.ts';

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

const OPERATOR_NAMES = new Set(['and', 'or', 'not']);

/**
 * Turns the parser's tree into the formula language, node by node; throws Refused at anything the
 * language does not have. The tree carries no places, so its leaves are matched in order with the
 * tokens they came from.
 */
export function allow(tree: MathNode, body: readonly Token[]): Syntax {
  return new Walk(body).read(tree);
}

class Walk {
  private readonly leaves: readonly Token[];
  private at = 0;

  constructor(body: readonly Token[]) {
    this.leaves = body.filter(({ type, text }) => type !== 'sign' && !OPERATOR_NAMES.has(text));
  }

  read(node: MathNode): Syntax {
    if (is<ParenthesisNode>(node, 'ParenthesisNode')) return this.read(node.content);
    if (is<ConstantNode>(node, 'ConstantNode')) return this.constant(node);
    if (is<SymbolNode>(node, 'SymbolNode')) {
      const leaf = this.leaf();
      return { ...span(leaf), form: 'name', name: leaf.text };
    }
    if (is<OperatorNode>(node, 'OperatorNode')) return this.operator(node);
    if (is<ConditionalNode>(node, 'ConditionalNode')) {
      const when = this.read(node.condition);
      const then = this.read(node.trueExpr);
      const otherwise = this.read(node.falseExpr);
      return { ...over(when, otherwise), form: 'choice', when, then, otherwise };
    }
    if (is<ArrayNode>(node, 'ArrayNode')) {
      const items = node.items.map((item) => this.read(item));
      const first = items[0] ?? this.here();
      return { ...over(first, items.at(-1) ?? first), form: 'list', items };
    }
    if (is<AccessorNode>(node, 'AccessorNode')) return this.member(node);
    if (is<FunctionNode>(node, 'FunctionNode')) return this.call(node);
    throw this.refuse(node);
  }

  private constant({ value }: ConstantNode): Syntax {
    const leaf = this.leaf();
    const place = span(leaf);
    if (typeof value === 'string') return { ...place, form: 'text', value };
    if (typeof value === 'boolean') return { ...place, form: 'flag', value };
    return { ...place, form: 'number', value: Number(leaf.text) };
  }

  private member(node: AccessorNode): Syntax {
    const index = node.index as IndexNode & { readonly dotNotation?: boolean };
    if (!is<SymbolNode>(node.object, 'SymbolNode') || index.dotNotation !== true) {
      throw this.refuse(node);
    }
    const sheet = this.leaf();
    const column = this.leaf();
    return { ...over(sheet, column), form: 'member', sheet: sheet.text, column: column.text };
  }

  private call(node: FunctionNode): Syntax {
    const fn: unknown = node.fn;
    if (!isNode(fn) || !is<SymbolNode>(fn, 'SymbolNode')) throw this.refuse(node);
    const name = this.leaf();
    if (unitNamed(name.text) && name.text !== 'min') {
      throw new Refused(
        name,
        `“${name.text}” is a unit, not a function.`,
        'Write * before the bracket.',
      );
    }
    const given = node.args.map((argument) => this.read(argument));
    return {
      ...over(name, given.at(-1) ?? name),
      form: 'call',
      name: name.text,
      nameSpan: span(name),
      arguments: given,
    };
  }

  private operator(node: OperatorNode): Syntax {
    const name = String(node.fn);
    const [first, second] = node.args;
    if (!first) throw this.refuse(node);
    if (isImplicit(node)) return this.measure(node);
    if (!second) return this.unary(name, first, node);
    const left = this.read(first);
    const lastOfLeft = this.leaves[this.at - 1];
    const right = this.read(second);
    const place = over(left, right);
    const arithmetic = ARITHMETIC.get(name);
    if (arithmetic !== undefined) {
      if (arithmetic === '/') refuseUnclearDivisor(first, second, right, lastOfLeft);
      if (arithmetic === '*' || arithmetic === '/') refuseSplitUnit(first, second, place);
      return { ...place, form: 'arithmetic', sign: arithmetic, left, right };
    }
    const comparison = COMPARISONS.get(name);
    if (comparison !== undefined) {
      if (is<OperatorNode>(first, 'OperatorNode') && String(first.fn) === 'not') {
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
    if (name === 'unaryMinus') {
      if (of.form === 'number') return { ...of, value: -of.value };
      return { ...span(of), form: 'negative', of };
    }
    if (name === 'unaryPlus') return of;
    if (name === 'not') return { ...span(of), form: 'not', of };
    throw this.refuse(node);
  }

  // Number and unit side by side: the one product that needs no sign.
  private measure(node: OperatorNode): Syntax {
    const start = this.at;
    const [number, unit] = node.args;
    const value = number && this.literal(number);
    const leaf = this.leaves[this.at];
    const exponent = unit && this.unitPower(unit);
    const place = over(
      this.leaves[start] ?? this.here(),
      this.leaves[Math.max(start, this.at - 1)] ?? this.here(),
    );
    if (value === undefined || exponent === undefined || !leaf) {
      const power = /^([A-Za-z]+)([23])$/.exec(leaf?.text ?? '');
      throw new Refused(
        place,
        'Two things side by side are not multiplied here.',
        power
          ? `Write ${power[1] ?? ''}^${power[2] ?? ''}, or * between them.`
          : 'Write * between them.',
      );
    }
    if (!Number.isFinite(value))
      throw new Refused(place, 'This divides by zero.', 'Write another number.');
    return { ...place, form: 'measure', value, unit: leaf.text, exponent };
  }

  private literal(node: MathNode): number | undefined {
    if (is<ConstantNode>(node, 'ConstantNode')) {
      return typeof node.value === 'number' ? Number(this.leaf().text) : undefined;
    }
    if (!is<OperatorNode>(node, 'OperatorNode') || isImplicit(node)) return undefined;
    const [first, second] = node.args;
    const name = String(node.fn);
    const left = first && this.literal(first);
    if (left === undefined) return undefined;
    if (name === 'unaryMinus') return -left;
    if (name === 'unaryPlus') return left;
    if (name !== 'divide' || !second || !is<ConstantNode>(second, 'ConstantNode')) return undefined;
    if (first && is<OperatorNode>(first, 'OperatorNode') && String(first.fn) === 'divide')
      return undefined;
    const right = this.literal(second);
    return right === undefined ? undefined : left / right;
  }

  private unitPower(node: MathNode): number | undefined {
    if (is<SymbolNode>(node, 'SymbolNode')) {
      return unitNamed(this.leaf().text) ? 1 : undefined;
    }
    if (!is<OperatorNode>(node, 'OperatorNode') || String(node.fn) !== 'pow') return undefined;
    const [base, exponent] = node.args;
    if (!base || !exponent || this.unitPower(base) !== 1) return undefined;
    return this.literal(exponent);
  }

  private leaf(): Token {
    const leaf = this.leaves[this.at];
    if (!leaf)
      throw new Refused(
        this.here(),
        'The formula could not be read to its end.',
        'Write it more simply.',
      );
    this.at += 1;
    return leaf;
  }

  private here(): Span {
    const leaf = this.leaves[this.at] ?? this.leaves.at(-1);
    return leaf ? span(leaf) : { start: 0, end: 0 };
  }

  private refuse(node: MathNode): Refused {
    const [found, fix] = REFUSED.get(node.type) ?? [
      'This is not part of the formula language.',
      'Take it out.',
    ];
    return new Refused(this.here(), found, fix);
  }
}

const REFUSED = new Map<string, readonly [string, string]>([
  ['RelationalNode', ['Comparisons do not chain.', 'Write a < b and b < c.']],
  ['RangeNode', ['Ranges are not part of a formula.', 'Write a list: [a, b].']],
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
  ['ObjectNode', ['Objects are not part of a formula.', 'Take it out.']],
]);

function refuseUnclearDivisor(
  left: MathNode,
  divisor: MathNode,
  right: Syntax,
  lastOfLeft: Token | undefined,
): void {
  if (right.form !== 'measure' || !is<OperatorNode>(divisor, 'OperatorNode')) return;
  const fraction = divisor.args[0];
  const isFraction =
    fraction && is<OperatorNode>(fraction, 'OperatorNode') && String(fraction.fn) === 'divide';
  const bareNumber =
    lastOfLeft?.type === 'number' && !isImplicitEnd(left) && left.type !== 'ParenthesisNode';
  if (isFraction || bareNumber || lastOfLeft?.text === 'pi') {
    throw new Refused(
      right,
      'It is not clear what this divides.',
      'Put brackets round the divisor or round the fraction.',
    );
  }
}

// The last leaf of `3 ft^2` is a number, but it belongs to the unit.
function isImplicitEnd(node: MathNode): boolean {
  if (!is<OperatorNode>(node, 'OperatorNode'))
    return node.type === 'FunctionNode' || node.type === 'ArrayNode';
  const last = node.args.at(-1);
  if (isImplicit(node)) return true;
  return (
    last !== undefined && node.args.length > 1 && String(node.fn) !== 'pow' && isImplicitEnd(last)
  );
}

function refuseSplitUnit(left: MathNode, right: MathNode, place: Span): void {
  if (!isBareUnit(right) || !is<OperatorNode>(left, 'OperatorNode') || String(left.fn) !== 'divide')
    return;
  const divisor = left.args[1];
  if (divisor && is<OperatorNode>(divisor, 'OperatorNode') && isImplicit(divisor)) {
    throw new Refused(
      place,
      'Only the first part of the unit would divide.',
      'Put brackets: x / (150 lb/ft^3).',
    );
  }
}

function isBareUnit(node: MathNode): boolean {
  if (is<SymbolNode>(node, 'SymbolNode'))
    return unitNamed(node.name === 'iN' ? 'in' : node.name) !== undefined;
  const base =
    is<OperatorNode>(node, 'OperatorNode') && String(node.fn) === 'pow' ? node.args[0] : undefined;
  return base !== undefined && isBareUnit(base);
}

function isImplicit(node: OperatorNode): boolean {
  return (node as OperatorNode & { readonly implicit?: boolean }).implicit === true;
}

function is<N extends MathNode>(node: MathNode, type: N['type']): node is N {
  return node.type === type;
}

function isNode(value: unknown): value is MathNode {
  return typeof value === 'object' && value !== null && 'type' in value;
}

function span({ start, end }: Span): Span {
  return { start, end };
}

function over(first: Span, last: Span): Span {
  return { start: first.start, end: last.end };
}
