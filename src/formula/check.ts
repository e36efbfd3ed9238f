import {
  FLAG,
  PLAIN,
  choiceOf,
  kindName,
  listOf,
  nearest,
  parseUnit,
  quantity,
  toSI,
  unitNamed,
  power,
} from '../units/index.ts';
import { checkArithmetic, checkComparison, checkNegative } from './check-operator.ts';
import { checkCall, functionNames } from './check-call.ts';
import type { Expression, Reference, Scope } from './expression.ts';
import { withArticle } from './fit.ts';
import { unified } from './general.ts';
import { Refused, type Span } from './problem.ts';
import type { Syntax } from './syntax.ts';

/** Where in a formula a check stands. */
export interface Place {
  readonly scope: Scope;
  /** Inside an aggregate, columns of other sheets go row by row. */
  readonly insideAggregate: boolean;
}

/** Gives every part of a formula its kind; throws Refused where kinds do not fit, before any data is read. */
export function check(syntax: Syntax, place: Place): Expression {
  const span = { start: syntax.start, end: syntax.end };
  switch (syntax.form) {
    case 'number':
      return { ...span, form: 'constant', kind: PLAIN, value: syntax.value };
    case 'measure':
      return checkMeasure(syntax, span);
    case 'text':
      return { ...span, form: 'constant', kind: choiceOf([syntax.value]), value: syntax.value };
    case 'flag':
      return { ...span, form: 'constant', kind: FLAG, value: syntax.value };
    case 'name':
      return checkName(syntax.name, span, place);
    case 'member':
      return checkMember(syntax.sheet, syntax.column, span, place);
    case 'negative':
      return checkNegative(check(syntax.of, place), span);
    case 'arithmetic':
      return checkArithmetic(syntax, span, place);
    case 'comparison':
      return checkComparison(
        syntax.sign,
        check(syntax.left, place),
        check(syntax.right, place),
        span,
      );
    case 'not':
      return { ...span, form: 'not', kind: FLAG, of: condition(check(syntax.of, place)) };
    case 'both':
    case 'either': {
      const left = condition(check(syntax.left, place));
      return {
        ...span,
        form: syntax.form,
        kind: FLAG,
        left,
        right: condition(check(syntax.right, place)),
      };
    }
    case 'choice':
      return checkChoice(syntax, span, place);
    case 'list':
      return checkList(syntax.items, span, place);
    case 'call':
      return checkCall(syntax, span, place);
  }
}

function checkMeasure(
  { value, unit: name, exponent }: Syntax & { form: 'measure' },
  span: Span,
): Expression {
  const unit = unitNamed(name);
  if (!unit)
    throw new Refused(span, `“${name}” is not a unit.`, 'Write in, ft, mm, m or another unit.');
  if (unit.offset !== 0) {
    if (exponent !== 1)
      throw new Refused(span, 'A temperature has no powers.', 'Write K for a difference.');
    const kind = { ...quantity(unit.dimension), scale: 'point' as const };
    return { ...span, form: 'constant', kind, value: toSI(value, unit) };
  }
  const kind = quantity(power(unit.dimension, exponent));
  return { ...span, form: 'constant', kind, value: value * unit.factor ** exponent };
}

function checkName(name: string, span: Span, { scope }: Place): Expression {
  if (name === 'pi') return { ...span, form: 'constant', kind: PLAIN, value: Math.PI };
  const reference = scope.bare(name);
  if (reference) return column(reference, span);
  const unit = parseUnit(name);
  if (unit)
    return { ...span, form: 'constant', kind: quantity(unit.dimension), value: unit.factor };
  if (scope.sheets().includes(name))
    throw new Refused(span, `“${name}” is a sheet.`, `Write ${name}.column.`);
  if (functionNames().includes(name))
    throw new Refused(span, `“${name}” is a function.`, `Write ${name}(...).`);
  const meant = nearest(name, scope.names());
  throw new Refused(
    span,
    `Nothing here is called “${name}”.`,
    meant === undefined
      ? 'Write a column, a job input, a unit, or text in quotes.'
      : `Did you mean ${meant}?`,
  );
}

function checkMember(
  sheet: string,
  name: string,
  span: Span,
  { scope, insideAggregate }: Place,
): Expression {
  const reference = scope.member(sheet, name, insideAggregate);
  if (!reference) {
    const sheets = scope.sheets();
    const wrongSheet = !sheets.includes(sheet);
    const meant = wrongSheet ? nearest(sheet, sheets) : undefined;
    throw new Refused(
      span,
      wrongSheet
        ? `There is no sheet “${sheet}”.`
        : `The sheet “${sheet}” has no column “${name}”.`,
      meant === undefined
        ? 'Write sheet.column with names that stand on the sheets.'
        : `Did you mean ${meant}?`,
    );
  }
  if (reference.reach === 'whole' && reference.sheet !== 'job' && !insideAggregate) {
    throw new Refused(
      span,
      `${sheet}.${name} is a whole column.`,
      `Say which value: sum(${sheet}.${name}), max(...), or value_for(key, ${sheet}.key, ${sheet}.${name}).`,
    );
  }
  return column(reference, span);
}

function column(reference: Reference, span: Span): Expression {
  return { ...span, form: 'column', kind: reference.kind, reference };
}

function checkChoice(syntax: Syntax & { form: 'choice' }, span: Span, place: Place): Expression {
  const when = condition(check(syntax.when, place));
  const then = check(syntax.then, place);
  const otherwise = check(syntax.otherwise, place);
  const kind = unified(then.kind, otherwise.kind);
  if (!kind) {
    throw new Refused(
      otherwise,
      `The two answers differ in kind: ${withArticle(kindName(then.kind))} and ${withArticle(kindName(otherwise.kind))}.`,
      'Give both the same kind.',
    );
  }
  return { ...span, form: 'choice', kind, when, then, otherwise };
}

function checkList(syntaxes: readonly Syntax[], span: Span, place: Place): Expression {
  const items = syntaxes.map((item) => check(item, place));
  const [first, ...rest] = items;
  if (!first) throw new Refused(span, 'The list is empty.', 'Write at least one item.');
  const of = rest.reduce((kind, item) => {
    const both = unified(kind, item.kind);
    if (!both || both.type === 'list') {
      throw new Refused(
        item,
        'The items of a list are of one kind.',
        `Write ${withArticle(kindName(kind))} here.`,
      );
    }
    return both;
  }, first.kind);
  return { ...span, form: 'list', kind: listOf(of), items };
}

function condition(expression: Expression): Expression {
  if (expression.kind.type !== 'flag') {
    throw new Refused(
      expression,
      `This is ${withArticle(kindName(expression.kind))}; a condition is wanted.`,
      'Compare it with something.',
    );
  }
  return expression;
}
