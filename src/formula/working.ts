import { EnteredRows, Words } from '../graph/index.ts';
import { numberText, sentence, siUnit, type Unit } from '../units/index.ts';
import type { Expression } from './expression.ts';
import type { Formula } from './formula.ts';
import { allParts, onTheWay, partText, partsInOrder, type Part } from './part.ts';
import { Program } from './program.ts';
import { unitFor, valueText } from './reckon.ts';

/**
 * The working of an expression that stands on no sheet, as lines of plain text: its value, every
 * rule called with what it was given and where it comes from, and every part with its value.
 */
export function workingLines(formula: Formula, digits = 4): readonly string[] {
  const program = new Program(formula.expression, new EnteredRows('expression', 1), new Words());
  const whole = program.parts(0);
  const write = new Writer(formula, digits);
  const parts = partsInOrder(whole);
  const listed = parts.flatMap((part) => write.part(part));
  return [
    write.outcome(whole),
    ...parts.flatMap((part) => write.rule(part)),
    ...(listed.length === 0 ? [] : ['', 'Part by part', ...aligned(listed)]),
  ];
}

class Writer {
  private readonly formula: Formula;
  private readonly digits: number;

  constructor(formula: Formula, digits: number) {
    this.formula = formula;
    this.digits = digits;
  }

  /** The value, or why there is none. */
  outcome(part: Part): string {
    if (part.value !== undefined) return this.value(part);
    const problem = allParts(part).find((each) => each.problem && each.used)?.problem;
    return problem ? sentence(problem) : 'It has no value.';
  }

  /** A rule that is called here, with its arguments, result and source; nothing where none is. */
  rule(part: Part): readonly string[] {
    const { expression, parts } = part;
    if (expression.form !== 'rule') return [];
    const { rule } = expression;
    const given = rule.parameters.map(({ name }, at): readonly [string, string] => {
      const argument = parts[at];
      return [name, argument ? this.argument(argument) : ''];
    });
    return [
      '',
      `${this.text(expression)}${part.used ? '' : '  (not used)'}`,
      ...aligned([...given, ['gives', part.problem?.found ?? this.value(part)]]),
      `  ${rule.meaning}`,
      `  ${rule.equation}`,
      ...aligned(
        onTheWay(part).map(({ symbol, meaning, value }) => [symbol, `${value}  (${meaning})`]),
      ),
      `  Source: ${rule.source}`,
      `  Standing: ${rule.standing}`,
      ...(rule.caution === undefined ? [] : [`  Caution: ${rule.caution}`]),
    ];
  }

  /** A part as it is written and what it comes to; nothing where both say the same. */
  part(part: Part): readonly (readonly [string, string])[] {
    const { expression } = part;
    const written = this.text(expression);
    const worth = this.value(part);
    const isPlain = expression.form === 'constant' && !/\d/.test(written);
    if (worth === written || isPlain) return [];
    return [[written, `${worth}${this.si(part)}${part.used ? '' : '  (not used)'}`]];
  }

  private argument(part: Part): string {
    const isWritten = part.expression.form === 'constant' && typeof part.value === 'number';
    return isWritten ? this.text(part.expression) : this.value(part);
  }

  private value({ expression, value }: Part): string {
    if (value === undefined) return 'no value';
    return valueText(value, expression.kind, this.unit(expression), this.digits);
  }

  // The outermost value is asked for in a unit of its own.
  private unit(expression: Expression): Unit {
    const { shownIn, expression: whole } = this.formula;
    return expression === whole && shownIn ? shownIn : unitFor(expression);
  }

  private si({ expression, value }: Part): string {
    const { kind } = expression;
    if (kind.type !== 'quantity' || typeof value !== 'number') return '';
    const unit = siUnit(kind.dimension);
    if (unit.symbol === '' || unit.symbol === this.unit(expression).symbol) return '';
    return `  (${numberText(value, Math.max(this.digits, 6))} ${unit.symbol})`;
  }

  private text(expression: Expression): string {
    return partText(this.formula.text, expression);
  }
}

// Long parts stand on a line of their own width; short ones line up.
function aligned(lines: readonly (readonly [string, string])[]): readonly string[] {
  const width = Math.min(40, Math.max(0, ...lines.map(([name]) => name.length)));
  return lines.map(([name, value]) => `  ${name.padEnd(width)}  ${value}`.trimEnd());
}
