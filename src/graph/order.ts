import { Column } from './column.ts';
import type { Rows } from './rows.ts';

/** Columns that need each other, in the order in which they do. */
export class LoopError extends Error {
  readonly loop: readonly string[];

  constructor(loop: readonly string[]) {
    super(`These need each other: ${loop.join(' → ')}.`);
    this.loop = loop;
  }
}

type Node = Column | Rows;

/** Columns and row sets so ordered that each comes after all it needs; throws a LoopError that names the way round. */
export function inOrder(columns: Iterable<Column>): readonly Node[] {
  const order: Node[] = [];
  const finished = new Set<Node>();
  const path: Node[] = [];
  const onPath = new Set<Node>();

  function visit(node: Node): void {
    if (finished.has(node)) return;
    if (onPath.has(node)) {
      const loop = [...path.slice(path.indexOf(node)), node];
      throw new LoopError(loop.filter((each) => each instanceof Column).map(({ name }) => name));
    }
    path.push(node);
    onPath.add(node);
    needs(node).forEach(visit);
    path.pop();
    onPath.delete(node);
    finished.add(node);
    order.push(node);
  }

  for (const column of columns) visit(column);
  return order;
}

function needs(node: Node): readonly Node[] {
  if (!(node instanceof Column))
    return node.parent ? [node.parent, ...node.deciders] : node.deciders;
  const inputs = node.computation.inputs.flatMap(({ column, reach }) =>
    // Only a whole column depends on which rows there are beyond its own.
    reach === 'row' || reach === 'near' ? [column] : [column.rows, column],
  );
  return [node.rows, ...inputs];
}
