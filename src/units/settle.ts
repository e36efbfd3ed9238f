import { quoted } from './characters.ts';
import { opposite, type Marks } from './marks.ts';
import type { Measure, Measures } from './measure.ts';
import type { Choice, Doubt, Reading } from './reading.ts';
import { inOtherSystem } from './write.ts';

/** The reading where there is one way to take an entry; more than one way, or an odd one, is asked about. */
export function settle(
  text: string,
  { ways, doubt }: Measures,
  marks: Marks,
  isLength: boolean,
): Reading | Doubt {
  const sided = ways.flatMap((way) => onSide(way, marks));
  const directed = sided.flatMap((way) => inDirection(way, marks));
  const [only] = directed;
  if (only && directed.length === 1 && doubt === undefined) {
    return {
      value: only.value,
      unit: only.unit,
      ...(only.assumed === true && { unitAssumed: true }),
      ...(marks.approximate && { approximate: true }),
      ...(only.toward !== undefined && { toward: only.toward.replace(/^toward /, '') }),
      ...(only.over !== undefined && { over: only.over }),
    };
  }
  const question =
    doubt === 'unit'
      ? `${quoted(text)} has no unit. Which is it?`
      : directed.length > 1
        ? `${quoted(text)} can be read in more than one way. Which is it?`
        : `${quoted(text)} is an odd way to write a reading. What was read?`;
  const choices = directed.map((way): Choice => {
    const approximate = marks.approximate ? '~' : '';
    const toward = way.toward === undefined ? '' : ` ${way.toward}`;
    const entry = `${approximate}${way.entry}${toward}`;
    const echo =
      isLength && way.over === undefined ? ` (${inOtherSystem(way.value, way.unit)})` : '';
    return { label: `${entry}${echo}`, entry };
  });
  return { doubt: doubt ?? 'reading', question, choices };
}

interface Directed extends Measure {
  readonly toward?: string;
}

/** A number below grade is negative; one that was negative already may have been meant either way. */
function onSide(way: Measure, { side }: Marks): readonly Measure[] {
  if (side === undefined || (side === 1 && way.value >= 0)) return [way];
  if (way.value < 0) return [way, negated(way)];
  return [negated(way)];
}

/** A negative gap toward a side may be a gap the other way. */
function inDirection(way: Measure, { toward }: Marks): readonly Directed[] {
  if (toward === undefined) return [way];
  if (way.value >= 0) return [{ ...way, toward }];
  const away = opposite(toward);
  const positive = negated(way);
  return [{ ...positive, toward }, ...(away === undefined ? [] : [{ ...positive, toward: away }])];
}

function negated(way: Measure): Measure {
  const entry = way.entry.startsWith('-') ? way.entry.slice(1) : `-${way.entry}`;
  return { ...way, value: 0 - way.value, entry };
}
