import {
  DATE,
  DURATION,
  FLAG,
  PLAIN,
  RATIO,
  fractionText,
  kindName,
  parseUnit,
  per,
  power,
  quantity,
  sameDimension,
  times,
  unitNamed,
  type Kind,
  type QuantityKind,
} from '../units/index.ts';
import { check, type Place } from './check.ts';
import type { Expression } from './expression.ts';
import { capital, massForForce, withArticle } from './fit.ts';
import { isWord, unified } from './general.ts';
import { Refused, type Span } from './problem.ts';
import type { Comparison, Syntax } from './syntax.ts';

/** Checks `-x`. */
export function checkNegative(of: Expression, span: Span): Expression {
  const kind = amount(of);
  if (kind.scale === 'point') {
    throw new Refused(
      span,
      'A temperature is not negated.',
      'Write the sign with its number: -15 degC.',
    );
  }
  return { ...span, form: 'negative', kind, of };
}

/** Checks `+ - * / ^`. */
export function checkArithmetic(
  syntax: Syntax & { form: 'arithmetic' },
  span: Span,
  place: Place,
): Expression {
  const right = check(syntax.right, place);
  const degrees =
    syntax.sign === '*' || syntax.sign === '/' ? degreesTimesUnit(syntax, place) : undefined;
  const left = degrees ?? check(syntax.left, place);
  if (syntax.sign === '-') refuseMixedNumber(syntax, span);
  switch (syntax.sign) {
    case '+':
    case '-':
      return checkSum(syntax.sign, left, right, span);
    case '*':
    case '/':
      return checkProduct(syntax.sign, left, right, span);
    case '^':
      return checkPower(left, right, span);
  }
}

// `3-1/2 in` is how a tape is read; here the minus takes away.
function refuseMixedNumber({ left, right }: Syntax & { form: 'arithmetic' }, span: Span): void {
  if (left.form !== 'number' || right.form !== 'measure' || right.exponent !== 1) return;
  const parts = right.value * 64;
  if (!Number.isInteger(left.value) || !Number.isInteger(parts) || parts <= 0 || parts >= 64)
    return;
  const [whole, fraction] = [String(left.value), fractionText(parts, 64)];
  const { unit } = right;
  throw new Refused(
    span,
    `${whole} has no unit, and ${fraction} ${unit} is not subtracted from it.`,
    `Write ${whole} ${unit} + ${fraction} ${unit} for ${whole} ${fraction} ${unit}.`,
  );
}

/** Checks `== != < <= > >=`. */
export function checkComparison(
  sign: Comparison,
  left: Expression,
  right: Expression,
  span: Span,
): Expression {
  const [a, b] = [left.kind, right.kind];
  if (a.type === 'choice' && b.type === 'choice') {
    const stranger = (left.form === 'constant' ? a : b).choices.find(
      (choice) => !(left.form === 'constant' ? b : a).choices.includes(choice),
    );
    const literal = (left.form === 'constant') !== (right.form === 'constant');
    if (literal && stranger !== undefined) {
      const choices = (left.form === 'constant' ? b : a).choices.join(', ');
      throw new Refused(span, `“${stranger}” is not one of ${choices}.`, 'Write one of these.');
    }
  }
  if (!unified(a, b) || a.type === 'list') throw differ(left, right, 'are not compared', span);
  const ordered = a.type === 'quantity' || a.type === 'date';
  if (!ordered && sign !== '==' && sign !== '!=') {
    throw new Refused(
      span,
      `${isWord(a) ? 'Texts have' : 'Yes and no have'} no order.`,
      'Write == or !=.',
    );
  }
  return { ...span, form: 'comparison', kind: FLAG, sign, left, right };
}

function checkSum(sign: '+' | '-', left: Expression, right: Expression, span: Span): Expression {
  const form = sign === '+' ? 'sum' : 'difference';
  const [a, b] = [left.kind, right.kind];
  if (a.type === 'date' || b.type === 'date') {
    const kind = dateResult(sign, a, b);
    if (!kind) throw differ(left, right, 'are not added', span);
    return { ...span, form, kind, left, right };
  }
  const [x, y] = [amount(left), amount(right)];
  if (!sameDimension(x.dimension, y.dimension))
    throw differ(left, right, sign === '+' ? 'are not added' : 'are not subtracted', span);
  return { ...span, form, kind: temperatureResult(sign, x, y, span), left, right };
}

// One temperature less another is a difference; with a difference it stays one temperature.
function temperatureResult(
  sign: '+' | '-',
  a: QuantityKind,
  b: QuantityKind,
  span: Span,
): QuantityKind {
  if (a.scale === 'point' && b.scale === 'point') {
    if (sign === '-') return { ...a, scale: 'difference' };
    throw new Refused(
      span,
      'Two temperatures are not added.',
      'Add a difference in K, or take the mean.',
    );
  }
  if (b.scale === 'point') {
    if (sign === '+') return b;
    if (!a.scale) return { ...a, scale: 'difference' };
    throw new Refused(span, 'A temperature is not taken from a difference.', 'Turn the two round.');
  }
  return a.scale ? a : b;
}

function dateResult(sign: '+' | '-', a: Kind, b: Kind): Kind | undefined {
  const isDuration = (kind: Kind): boolean =>
    kind.type === 'quantity' && sameDimension(kind.dimension, DURATION);
  if (a.type === 'date' && b.type === 'date') return sign === '-' ? quantity(DURATION) : undefined;
  if (a.type === 'date') return isDuration(b) ? DATE : undefined;
  return sign === '+' && isDuration(a) ? DATE : undefined;
}

function checkProduct(
  sign: '*' | '/',
  left: Expression,
  right: Expression,
  span: Span,
): Expression {
  const [a, b] = [amount(left), amount(right)];
  if (a.scale === 'point' || b.scale === 'point') {
    throw new Refused(
      a.scale === 'point' ? left : right,
      'A temperature is not multiplied or divided.',
      'Take a difference first: (a - b), or write K.',
    );
  }
  const combined = sign === '*' ? times(a.dimension, b.dimension) : per(a.dimension, b.dimension);
  const isScaled = sameDimension(b.dimension, RATIO)
    ? a.scale
    : sameDimension(a.dimension, RATIO) && sign === '*'
      ? b.scale
      : undefined;
  const kind = { ...quantity(combined), ...(isScaled && { scale: isScaled }) };
  return { ...span, form: sign === '*' ? 'product' : 'quotient', kind, left, right };
}

// `540 degC*h`: beside a bare unit, degrees are degrees of difference.
function degreesTimesUnit(
  { left, right }: Syntax & { form: 'arithmetic' },
  { scope }: Place,
): Expression | undefined {
  if (left.form !== 'measure' || left.exponent !== 1) return undefined;
  const unit = unitNamed(left.unit);
  const base = right.form === 'arithmetic' && right.sign === '^' ? right.left : right;
  if (unit?.symbol !== 'degC' && unit?.symbol !== 'degF') return undefined;
  if (base.form !== 'name' || scope.bare(base.name) || !parseUnit(base.name)) return undefined;
  return {
    start: left.start,
    end: left.end,
    form: 'constant',
    kind: quantity(unit.dimension),
    value: left.value * unit.factor,
  };
}

function checkPower(base: Expression, exponent: Expression, span: Span): Expression {
  const [of, by] = [amount(base), amount(exponent)];
  if (!sameDimension(by.dimension, RATIO)) {
    throw new Refused(
      exponent,
      `An exponent is a plain number, not ${withArticle(kindName(by))}.`,
      'Divide it by a unit first.',
    );
  }
  if (of.scale === 'point')
    throw new Refused(base, 'A temperature has no powers.', 'Write it in K.');
  if (sameDimension(of.dimension, RATIO)) {
    return { ...span, form: 'power', kind: PLAIN, left: base, right: exponent };
  }
  const fixed = literalNumber(exponent);
  if (fixed === undefined) {
    throw new Refused(
      exponent,
      'The exponent of a quantity with a unit must be a written number.',
      'Write it, such as ^2.',
    );
  }
  return {
    ...span,
    form: 'power',
    kind: quantity(power(of.dimension, fixed)),
    left: base,
    right: exponent,
  };
}

function literalNumber(expression: Expression): number | undefined {
  if (expression.form === 'constant')
    return typeof expression.value === 'number' ? expression.value : undefined;
  if (expression.form === 'quotient') {
    const [above, below] = [literalNumber(expression.left), literalNumber(expression.right)];
    return above === undefined || below === undefined || below === 0 ? undefined : above / below;
  }
  if (expression.form !== 'negative') return undefined;
  const of = literalNumber(expression.of);
  return of === undefined ? undefined : -of;
}

function amount(expression: Expression): QuantityKind {
  if (expression.kind.type === 'quantity') return expression.kind;
  throw new Refused(
    expression,
    `This is ${withArticle(kindName(expression.kind))}; a number is wanted.`,
    isWord(expression.kind) ? 'Texts are only compared.' : 'Use it in a condition.',
  );
}

function differ(left: Expression, right: Expression, verb: string, span: Span): Refused {
  return new Refused(
    span,
    `${capital(withArticle(kindName(left.kind)))} and ${withArticle(kindName(right.kind))} ${verb}.`,
    massForForce(left.kind, right.kind) ?? 'Bring both to one kind.',
  );
}
