import { unitNamed } from '../units/index.ts';
import { Refused, type Span } from './problem.ts';
import type { Syntax } from './syntax.ts';
import type { Token } from './tokens.ts';
import { is, type MathNode, type OperatorNode, type SymbolNode } from './tree.ts';

/** Refuses a fraction with a unit as a divisor: it is not clear what it divides. */
export function refuseUnclearDivisor(
  left: MathNode,
  divisor: MathNode,
  right: Syntax,
  lastOfLeft: Token | undefined,
): void {
  if (right.form !== 'measure' || !is<OperatorNode>(divisor, 'OperatorNode')) return;
  const fraction = divisor.args[0];
  const isFraction =
    fraction && is<OperatorNode>(fraction, 'OperatorNode') && fraction.fn === 'divide';
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
  if (node.implicit) return true;
  return last !== undefined && node.args.length > 1 && node.fn !== 'pow' && isImplicitEnd(last);
}

/** Refuses `x / 150 lb/ft^3`, where only `lb` would divide. */
export function refuseSplitUnit(left: MathNode, right: MathNode, place: Span): void {
  if (!isBareUnit(right) || !is<OperatorNode>(left, 'OperatorNode') || left.fn !== 'divide') return;
  const divisor = left.args[1];
  if (divisor && is<OperatorNode>(divisor, 'OperatorNode') && divisor.implicit) {
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
    is<OperatorNode>(node, 'OperatorNode') && node.fn === 'pow' ? node.args[0] : undefined;
  return base !== undefined && isBareUnit(base);
}
