/**
 * The tree that the parser makes of a formula. The parser's own nodes can also be evaluated, written as TeX and much
 * more, which is three quarters of its weight; these hold what was read, and nothing can be evaluated.
 */
export abstract class MathNode {
  abstract readonly type: string;

  // How the parser tells a node from anything else.
  get isNode(): boolean {
    return true;
  }

  /** The nodes directly inside. */
  get children(): readonly MathNode[] {
    return [];
  }
}

export class ConstantNode extends MathNode {
  readonly type = 'ConstantNode';
  readonly isConstantNode = true;
  readonly value: unknown;

  constructor(value: unknown) {
    super();
    this.value = value;
  }
}

export class SymbolNode extends MathNode {
  readonly type = 'SymbolNode';
  readonly isSymbolNode = true;
  readonly name: string;

  constructor(name: string) {
    super();
    this.name = name;
  }
}

/** One or two operands; `fn` is the operator's name, such as `divide`. */
export class OperatorNode extends MathNode {
  readonly type = 'OperatorNode';
  readonly isOperatorNode = true;
  readonly op: string;
  readonly fn: string;
  readonly args: readonly MathNode[];
  /** Whether a product is written without a sign, as in `5 ft`. */
  readonly implicit: boolean;

  constructor(op: string, fn: string, args: readonly MathNode[], implicit = false) {
    super();
    this.op = op;
    this.fn = fn;
    this.args = args;
    this.implicit = implicit;
  }

  override get children(): readonly MathNode[] {
    return this.args;
  }
}

export class ParenthesisNode extends MathNode {
  readonly type = 'ParenthesisNode';
  readonly isParenthesisNode = true;
  readonly content: MathNode;

  constructor(content: MathNode) {
    super();
    this.content = content;
  }

  override get children(): readonly MathNode[] {
    return [this.content];
  }
}

/** `condition ? trueExpr : falseExpr`. */
export class ConditionalNode extends MathNode {
  readonly type = 'ConditionalNode';
  readonly isConditionalNode = true;
  readonly condition: MathNode;
  readonly trueExpr: MathNode;
  readonly falseExpr: MathNode;

  constructor(condition: MathNode, trueExpr: MathNode, falseExpr: MathNode) {
    super();
    this.condition = condition;
    this.trueExpr = trueExpr;
    this.falseExpr = falseExpr;
  }

  override get children(): readonly MathNode[] {
    return [this.condition, this.trueExpr, this.falseExpr];
  }
}

/** Several comparisons in a row, `a < b < c`. */
export class RelationalNode extends MathNode {
  readonly type = 'RelationalNode';
  readonly params: readonly MathNode[];

  constructor(_signs: readonly string[], params: readonly MathNode[]) {
    super();
    this.params = params;
  }

  override get children(): readonly MathNode[] {
    return this.params;
  }
}

export class ArrayNode extends MathNode {
  readonly type = 'ArrayNode';
  readonly items: readonly MathNode[];

  constructor(items: readonly MathNode[]) {
    super();
    this.items = items;
  }

  override get children(): readonly MathNode[] {
    return this.items;
  }
}

/** What stands in the brackets of `a[...]`, or behind the point of `a.b`. */
export class IndexNode extends MathNode {
  readonly type = 'IndexNode';
  readonly dimensions: readonly MathNode[];
  readonly dotNotation: boolean;

  constructor(dimensions: readonly MathNode[], dotNotation = false) {
    super();
    this.dimensions = dimensions;
    this.dotNotation = dotNotation;
  }

  override get children(): readonly MathNode[] {
    return this.dimensions;
  }
}

export class AccessorNode extends MathNode {
  readonly type = 'AccessorNode';
  readonly isAccessorNode = true;
  readonly object: MathNode;
  readonly index: IndexNode;

  constructor(object: MathNode, index: IndexNode) {
    super();
    this.object = object;
    this.index = index;
  }

  override get children(): readonly MathNode[] {
    return [this.object, this.index];
  }
}

export class FunctionNode extends MathNode {
  readonly type = 'FunctionNode';
  readonly isFunctionNode = true;
  readonly fn: MathNode;
  readonly args: readonly MathNode[];

  constructor(fn: MathNode, args: readonly MathNode[]) {
    super();
    this.fn = fn;
    this.args = args;
  }

  override get children(): readonly MathNode[] {
    return [this.fn, ...this.args];
  }
}

/** `a:b`. */
export class RangeNode extends MathNode {
  readonly type = 'RangeNode';
  readonly ends: readonly MathNode[];

  constructor(...ends: readonly MathNode[]) {
    super();
    this.ends = ends;
  }

  override get children(): readonly MathNode[] {
    return this.ends;
  }
}

/** What no token of a formula leads to: assignments, blocks, objects. */
export class OtherNode extends MathNode {
  readonly type = 'OtherNode';
}

/** Whether a node is of this type. */
export function is<N extends MathNode>(node: MathNode, type: N['type']): node is N {
  return node.type === type;
}
