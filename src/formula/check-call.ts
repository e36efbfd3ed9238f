import { CATALOG } from '../trade/index.ts';
import { PLAIN, kindName, listOf, nearest, unitNamed, type Kind } from '../units/index.ts';
import { check, type Place } from './check.ts';
import { parts, type Expression, type Reference } from './expression.ts';
import { massForForce, misfit, withArticle } from './fit.ts';
import { AGGREGATES, GENERAL, aggregateResult, unified, type Aggregate } from './general.ts';
import { Refused, type Span } from './problem.ts';
import type { Syntax } from './syntax.ts';

type Call = Syntax & { form: 'call' };

/** Every function name that formulas know. */
export function functionNames(): readonly string[] {
  return [
    ...CATALOG.keys(),
    ...GENERAL.keys(),
    ...AGGREGATES.keys(),
    'previous',
    'next',
    'row_number',
  ];
}

/** Checks a call: that the function exists, how many arguments it has, and their kinds. */
export function checkCall(call: Call, span: Span, place: Place): Expression {
  const rule = CATALOG.get(call.name);
  if (rule) {
    refuseCount(
      call,
      rule.parameters.map(({ name }) => name),
    );
    const given = call.arguments.map((argument, at) => {
      const parameter = rule.parameters[at];
      const wholeColumn = parameter?.kind.type === 'list' && argument.form === 'member';
      const checked = check(argument, wholeColumn ? { ...place, insideAggregate: true } : place);
      if (parameter)
        refuseKind(call, parameter.name, asList(checked, parameter.kind), parameter.kind);
      return checked;
    });
    return { ...span, form: 'rule', kind: rule.result, rule, arguments: given };
  }
  const general = GENERAL.get(call.name);
  if (general) {
    refuseCount(call, general.parameters);
    const given = call.arguments.map((argument) => check(argument, place));
    const kind = general.result(given.map((each) => each.kind));
    if (typeof kind === 'string') throw wanted(call, given, kind, span);
    return { ...span, form: 'general', kind, name: general.name, arguments: given };
  }
  const aggregate = AGGREGATES.get(call.name);
  if (aggregate) return checkAggregate(call, aggregate, span, place);
  if (call.name === 'previous' || call.name === 'next') return checkNeighbor(call, span, place);
  if (call.name === 'row_number') {
    refuseCount(call, []);
    return { ...span, form: 'row number', kind: PLAIN };
  }
  throw unknown(call, place);
}

function checkAggregate(call: Call, aggregate: Aggregate, span: Span, place: Place): Expression {
  const several = aggregate.parameters.length === 1;
  if (
    call.arguments.length === 0 ||
    (!several && call.arguments.length !== aggregate.parameters.length)
  ) {
    refuseCount(call, aggregate.parameters);
  }
  const given = call.arguments.map((argument, at) => {
    // The key of value_for is the row's own.
    const outside = aggregate.name === 'value_for' && at === 0;
    return check(argument, { ...place, insideAggregate: outside ? place.insideAggregate : true });
  });
  const sheets = new Set(given.flatMap(wholeReferences).map(({ sheet }) => sheet));
  if (sheets.size > 1) {
    throw new Refused(
      span,
      `${aggregate.name} meets columns of ${[...sheets].join(' and ')}; their rows do not go together.`,
      'Use the columns of one sheet.',
    );
  }
  const [sheet] = sheets;
  if (sheet === undefined) return checkFewValues(call, aggregate, given, span);
  if (several && given.length > 1) refuseCount(call, aggregate.parameters);
  const kind = aggregateResult(
    aggregate.name,
    given.map((each) => each.kind),
  );
  if (typeof kind === 'string') throw wanted(call, given, kind, span);
  return { ...span, form: 'aggregate', kind, name: aggregate.name, sheet, arguments: given };
}

// max(30 in, frost_depth + 6 in), or one list.
function checkFewValues(
  call: Call,
  { name }: Aggregate,
  given: readonly Expression[],
  span: Span,
): Expression {
  if (name === 'pick' || name === 'value_for') {
    throw new Refused(
      span,
      `${name} looks through a sheet.`,
      'Give it columns, written sheet.column.',
    );
  }
  const [first, ...rest] = given;
  const single =
    first && rest.length === 0 && first.kind.type === 'list' ? first.kind.of : undefined;
  const all = single
    ? single
    : rest.reduce<Kind | undefined>((kind, each) => kind && unified(kind, each.kind), first?.kind);
  if (!all || all.type === 'list') throw wanted(call, given, 'values of one kind', span);
  const kind = aggregateResult(name, [all]);
  if (typeof kind === 'string') throw wanted(call, given, kind, span);
  return { ...span, form: 'aggregate', kind, name, sheet: '', arguments: given };
}

function checkNeighbor(call: Call, span: Span, place: Place): Expression {
  refuseCount(call, ['column']);
  const [argument] = call.arguments;
  const column = argument && check(argument, place);
  if (column?.form !== 'column' || column.reference.reach !== 'row') {
    throw new Refused(
      span,
      `${call.name} reads a neighboring row.`,
      'Give it one column of this sheet by its bare name.',
    );
  }
  const step = call.name === 'previous' ? -1 : 1;
  return { ...span, form: 'neighbor', kind: column.kind, reference: column.reference, step };
}

/** The references that an aggregate goes through row by row. */
export function wholeReferences(expression: Expression): readonly Reference[] {
  const known = found.get(expression) ?? lookedThrough(expression);
  found.set(expression, known);
  return known;
}

// Asked of every part of a formula, and of every part of those parts.
const found = new WeakMap<Expression, readonly Reference[]>();

function lookedThrough(expression: Expression): readonly Reference[] {
  if (expression.form === 'aggregate' && expression.sheet !== '') return [];
  if (expression.form === 'column') {
    const { reference } = expression;
    return reference.reach === 'whole' && reference.sheet !== 'job' ? [reference] : [];
  }
  return parts(expression).flatMap(wholeReferences);
}

function asList(given: Expression, kind: Kind): Expression {
  const isColumn = given.form === 'column' && wholeReferences(given).length > 0;
  return kind.type === 'list' && isColumn ? { ...given, kind: listOf(given.kind) } : given;
}

function refuseCount(call: Call, parameters: readonly string[]): void {
  if (call.arguments.length === parameters.length) return;
  throw new Refused(
    call,
    `${call.name} takes ${howMany(parameters.length)}, not ${String(call.arguments.length)}.`,
    `Write ${call.name}(${parameters.join(', ')}).`,
  );
}

function howMany(count: number): string {
  if (count === 0) return 'no values';
  return count === 1 ? '1 value' : `${String(count)} values`;
}

function refuseKind(call: Call, parameter: string, given: Expression, kind: Kind): void {
  const found = misfit(given.kind, kind);
  if (found === undefined) return;
  throw new Refused(
    given,
    `${call.name}, ${parameter}: ${found}`,
    massForForce(given.kind, kind) ?? `Give ${withArticle(kindName(kind))}.`,
  );
}

function wanted(call: Call, given: readonly Expression[], what: string, span: Span): Refused {
  const kinds = given.map((each) => withArticle(kindName(each.kind))).join(' and ');
  return new Refused(span, `${call.name} was given ${kinds}.`, `Give it ${what}.`);
}

function unknown(call: Call, { scope }: Place): Refused {
  const isName = scope.bare(call.name) !== undefined || unitNamed(call.name) !== undefined;
  const meant = nearest(call.name, functionNames());
  return new Refused(
    call.nameSpan,
    `There is no function “${call.name}”.`,
    isName
      ? `Write ${call.name} * (...).`
      : meant === undefined
        ? 'Use one of the functions in the list.'
        : `Did you mean ${meant}?`,
  );
}
