import type { Column, Rows, Words } from '../graph/index.ts';
import { wholeReferences } from './check-call.ts';
import { encode } from './code.ts';
import { varies, type Expression, type Reference } from './expression.ts';
import { type Node } from './node.ts';
import { AggregateNode, FewNode, type Band } from './node-aggregate.ts';
import {
  DifferenceNode,
  NegativeNode,
  PowerNode,
  ProductNode,
  QuotientNode,
  SumNode,
} from './node-arithmetic.ts';
import {
  ColumnNode,
  ConstantNode,
  FollowedNode,
  NeighborNode,
  OutsideNode,
  RowNumberNode,
  SingleNode,
  StillNode,
} from './node-column.ts';
import { FunctionNode, GivenNode, OnlyIfNode } from './node-general.ts';
import { ChoiceNode, type Branch } from './node-choice.ts';
import { ComparisonNode, LogicNode, NotNode, SameNode } from './node-logic.ts';
import { LookupNode, type KeyedColumn } from './node-lookup.ts';
import { ListAggregateNode, WrittenListNode } from './node-list.ts';
import {
  CellSource,
  ItemsSource,
  NumberSource,
  RuleNode,
  WholeColumnSource,
  type ArgumentSource,
} from './node-rule.ts';

/** Builds the working parts of a formula for the rows it stands on. */
export function compile(expression: Expression, rows: Rows, words: Words): Node {
  return new Compiler(rows, words).build(expression);
}

/** The same, with the node of every part that has one; a part that goes row by row inside an aggregate has none. */
export function compileParts(
  expression: Expression,
  rows: Rows,
  words: Words,
): { readonly node: Node; readonly nodes: ReadonlyMap<Expression, Node> } {
  const compiler = new Compiler(rows, words, true);
  return { node: compiler.build(expression), nodes: compiler.built };
}

/** Inside an aggregate: which band is gone through, and what stands still. */
interface Inside {
  readonly sheet: string;
  readonly band: number;
  readonly outer: Compiler;
  readonly outside: OutsideNode[];
}

class Compiler {
  readonly built = new Map<Expression, Node>();
  private readonly rows: Rows;
  private readonly words: Words;
  /** Every part is worked out, also those that can't change the value. */
  private readonly isWhole: boolean;
  private readonly inside: Inside | undefined;
  /** The number of the next room that formulas share. */
  private readonly shared: { next: number };

  constructor(rows: Rows, words: Words, isWhole = false, inside?: Inside) {
    this.rows = rows;
    this.words = words;
    this.isWhole = isWhole;
    this.inside = inside;
    this.shared = inside?.outer.shared ?? { next: 0 };
  }

  build(expression: Expression): Node {
    let node = this.built.get(expression);
    if (!node) {
      node = this.make(expression);
      if (this.inside || varies(expression)) node.shared = this.isWhole ? -1 : this.shared.next++;
      else if (this.isHeldStill(expression)) node = new StillNode(node);
      this.built.set(expression, node);
    }
    return node;
  }

  // What follows from the job alone is worked out once for all rows.
  private isHeldStill(expression: Expression): boolean {
    const isPlain = expression.form === 'constant' || expression.form === 'column';
    return !isPlain && !this.isWhole && !this.inside && !varies(expression);
  }

  private make(expression: Expression): Node {
    if (this.inside && expression.form !== 'constant' && wholeReferences(expression).length === 0) {
      const outside = new OutsideNode(this.inside.outer.build(expression));
      this.inside.outside.push(outside);
      return outside;
    }
    switch (expression.form) {
      case 'constant':
        return new ConstantNode(encode(expression.value, this.words));
      case 'column':
        return this.column(expression.reference);
      case 'row number':
        return new RowNumberNode();
      case 'neighbor':
        return new NeighborNode(only(expression.reference), expression.step);
      case 'negative':
        return new NegativeNode(this.build(expression.of));
      case 'not':
        return new NotNode(this.build(expression.of));
      case 'choice':
        return this.choice(expression);
      case 'comparison':
        return this.comparison(expression);
      case 'general':
        return this.general(expression);
      case 'rule':
        return new RuleNode(
          expression.rule,
          expression.arguments.map((each) => this.argument(each)),
        );
      case 'aggregate':
        return this.aggregate(expression);
      case 'list':
        return new WrittenListNode(
          expression.items.map((item) => this.build(item)),
          this.words,
        );
      default:
        return this.pair(
          expression.form,
          this.build(expression.left),
          this.build(expression.right),
        );
    }
  }

  private choice(expression: Expression & { form: 'choice' }): Node {
    const choices: Branch[] = [];
    let last = expression;
    for (;;) {
      choices.push({ when: this.build(last.when), then: this.build(last.then) });
      if (last.otherwise.form !== 'choice' || !this.isOfOneWith(last.otherwise)) break;
      last = last.otherwise;
    }
    return new ChoiceNode(choices, this.build(last.otherwise), this.isWhole);
  }

  /** Whether a choice in the last place of another needs no node of its own: nobody looks at it, and it is worked out for each row. */
  private isOfOneWith(choice: Expression): boolean {
    return !this.isWhole && !this.inside && varies(choice);
  }

  private pair(form: PairForm, left: Node, right: Node): Node {
    switch (form) {
      case 'sum':
        return new SumNode(left, right);
      case 'difference':
        return new DifferenceNode(left, right);
      case 'product':
        return new ProductNode(left, right);
      case 'quotient':
        return new QuotientNode(left, right);
      case 'power':
        return new PowerNode(left, right);
      case 'both':
      case 'either':
        return new LogicNode(form, left, right, this.isWhole);
    }
  }

  private column(reference: Reference): Node {
    if (this.inside && reference.sheet === this.inside.sheet && reference.reach === 'whole') {
      return new ColumnNode(only(reference, this.inside.band));
    }
    const column = only(reference);
    switch (reference.reach) {
      case 'row':
        return new ColumnNode(column);
      case 'follow':
        return new FollowedNode(column, this.rows);
      case 'near':
      case 'whole':
        return new SingleNode(column);
    }
  }

  private comparison({ sign, left, right }: Expression & { form: 'comparison' }): Node {
    const [a, b] = [this.build(left), this.build(right)];
    if (left.kind.type === 'quantity' || left.kind.type === 'date') {
      const terms = [...this.terms(left), ...this.terms(right)];
      return new ComparisonNode(sign, a, b, terms);
    }
    return new SameNode(sign === '!=' ? '!=' : '==', a, b);
  }

  private general({ name, arguments: given }: Expression & { form: 'general' }): Node {
    const nodes = given.map((each) => this.build(each));
    const [first, second] = nodes;
    if (name === 'given' || name === 'only_if') {
      if (!first || !second) throw new Error(`${name} takes two values.`);
      return name === 'given'
        ? new GivenNode(first, second, this.isWhole)
        : new OnlyIfNode(first, second, this.isWhole);
    }
    const added = name === 'ceil' || name === 'floor' || name === 'round' || name === 'up_to_step';
    return new FunctionNode(name, nodes, added && given[0] ? this.terms(given[0]) : []);
  }

  /** What a sum was added from; nothing where the expression is no sum. */
  private terms(expression: Expression): readonly Node[] {
    return isSum(expression) ? addends(expression).map((each) => this.build(each)) : [];
  }

  private argument(expression: Expression): ArgumentSource {
    if (expression.form === 'list')
      return new ItemsSource(expression.items.map((item) => this.build(item)));
    if (expression.form === 'column' && !this.inside && wholeReferences(expression).length > 0) {
      return new WholeColumnSource(expression.reference.columns);
    }
    const node = this.build(expression);
    switch (expression.kind.type) {
      case 'text':
      case 'choice':
        return new CellSource(node, (code) => this.words.text(code));
      case 'list':
        return new CellSource(node, (code) => this.words.list(code));
      default:
        return new NumberSource(node);
    }
  }

  private aggregate(expression: Expression & { form: 'aggregate' }): Node {
    const { name, sheet, arguments: given } = expression;
    if (sheet === '') {
      const [first] = given;
      const items = first?.form === 'list' && given.length === 1 ? first.items : given;
      if (first?.kind.type === 'list' && first.form !== 'list') {
        return new ListAggregateNode(name, this.build(first), this.words);
      }
      return new FewNode(
        name,
        items.map((each) => this.build(each)),
      );
    }
    const outside: OutsideNode[] = [];
    const bandColumns = given.flatMap(wholeReferences)[0]?.columns ?? [];
    const bands = bandColumns.map((column, band): Band => {
      const inner = new Compiler(column.rows, this.words, this.isWhole, {
        sheet,
        band,
        outer: this,
        outside,
      });
      return { rows: column.rows, given: given.map((each) => inner.build(each)) };
    });
    // Columns of the sheet gone through are whole here, so whatever else varies is outside.
    const isSame = !given.some(varies);
    const [wanted, ...others] = outside;
    const columns = keyedColumns(expression);
    const isWord = given[0]?.kind.type === 'text' || given[0]?.kind.type === 'choice';
    const keyText = (key: number): string | undefined =>
      isWord ? this.words.text(key) : undefined;
    if (!isSame && wanted && columns)
      return new LookupNode(bands, [wanted, ...others], columns, keyText);
    return new AggregateNode(name, bands, outside, isSame, keyText);
  }
}

/** The columns that a plain `value_for` looks in; undefined for any other aggregate. */
function keyedColumns({
  name,
  arguments: [wanted, keys, values],
}: Expression & { form: 'aggregate' }): readonly KeyedColumn[] | undefined {
  if (name !== 'value_for' || !wanted || wholeReferences(wanted).length > 0) return undefined;
  if (keys?.form !== 'column' || values?.form !== 'column') return undefined;
  if (wholeReferences(keys).length === 0 || wholeReferences(values).length === 0) return undefined;
  return keys.reference.columns.flatMap((column, band) => {
    const value = values.reference.columns[band];
    return value ? [{ keys: column, values: value }] : [];
  });
}

type PairForm = 'sum' | 'difference' | 'product' | 'quotient' | 'power' | 'both' | 'either';

function isSum(expression: Expression): expression is Expression & { form: 'sum' | 'difference' } {
  return expression.form === 'sum' || expression.form === 'difference';
}

function addends(expression: Expression): readonly Expression[] {
  if (isSum(expression)) return [...addends(expression.left), ...addends(expression.right)];
  return expression.form === 'negative' ? addends(expression.of) : [expression];
}

function only(reference: Reference, band = 0): Column {
  const column = reference.columns[band];
  if (!column) throw new Error(`${reference.sheet}.${reference.name} has no band ${String(band)}.`);
  return column;
}
