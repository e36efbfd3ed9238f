import type { MathNode, OperatorNode } from 'mathjs/number';

/** Whether a node of the parser's tree is of this type. */
export function is<N extends MathNode>(node: MathNode, type: N['type']): node is N {
  return node.type === type;
}

/** Whether something is a node of the parser's tree. */
export function isNode(value: unknown): value is MathNode {
  return typeof value === 'object' && value !== null && 'type' in value;
}

/** Whether a product is written without a sign, as in `5 ft`. */
export function isImplicit(node: OperatorNode): boolean {
  return (node as OperatorNode & { readonly implicit?: boolean }).implicit;
}
