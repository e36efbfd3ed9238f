import type { Expression } from '../../../src/formula/index.ts';
import type { Column } from '../../../src/graph/index.ts';
import type { Engine } from '../../../src/worksheet/engine.ts';
import type { ColumnModel } from '../../../src/worksheet/model.ts';

/** A column of the built-in sheets that one job input changes, row by row. */
export interface WorkedColumn {
  readonly name: string;
  readonly column: Column;
  readonly expression: Expression;
  readonly sort: 'arithmetic' | 'trade' | 'aggregate' | 'entry over formula';
}

/** The columns with a row a post, or a row for some posts, that changed when a job input did. */
export function workedColumns(engine: Engine, changed: ReadonlySet<Column>): WorkedColumn[] {
  return [...engine.models.values()].flatMap(({ definition, bands }) => {
    if (definition.id !== 'posts' && definition.rows.from !== 'following') return [];
    return [...(bands[0]?.columns.values() ?? [])].flatMap((model): WorkedColumn[] => {
      const column = model.suggestion ?? model.result;
      const expression = model.formula?.expression;
      const name = `${definition.id}.${model.definition.id}`;
      const found: WorkedColumn[] = [];
      if (expression && changed.has(column))
        found.push({ name, column, expression, sort: sortOf(expression) });
      if (model.suggestion && changed.has(model.result))
        found.push({
          name: `${name}, entry over formula`,
          column: model.result,
          expression: entryOverFormula(model),
          sort: 'entry over formula',
        });
      return found;
    });
  });
}

/** What is typed, or else what the formula says, as a formula of its own. */
function entryOverFormula({ sheet, definition, kind, entry, suggestion }: ColumnModel): Expression {
  const read = (column: Column | undefined): Expression => ({
    start: 0,
    end: 0,
    kind,
    form: 'column',
    reference: {
      sheet,
      name: definition.id,
      label: definition.label,
      kind,
      reach: 'row',
      columns: column ? [column] : [],
    },
  });
  const both = [read(entry), read(suggestion)];
  return { start: 0, end: 0, kind, form: 'general', name: 'given', arguments: both };
}

function sortOf(expression: Expression): WorkedColumn['sort'] {
  const forms = [...everyPart(expression)];
  const gathers = forms.some((part) => part.form === 'aggregate' && part.sheet !== '');
  const listens = forms.some(
    (part) =>
      part.form === 'column' && part.reference.reach === 'whole' && part.reference.sheet !== 'job',
  );
  if (gathers || listens) return 'aggregate';
  return forms.some(({ form }) => form === 'rule') ? 'trade' : 'arithmetic';
}

function* everyPart(expression: Expression): Generator<Expression> {
  yield expression;
  for (const part of partsOf(expression)) yield* everyPart(part);
}

function partsOf(expression: Expression): readonly Expression[] {
  switch (expression.form) {
    case 'constant':
    case 'column':
    case 'row number':
    case 'neighbor':
      return [];
    case 'negative':
    case 'not':
      return [expression.of];
    case 'choice':
      return [expression.when, expression.then, expression.otherwise];
    case 'list':
      return expression.items;
    case 'rule':
    case 'general':
    case 'aggregate':
      return expression.arguments;
    default:
      return [expression.left, expression.right];
  }
}
