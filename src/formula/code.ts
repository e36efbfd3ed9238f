import type { Words } from '../graph/index.ts';
import type { Kind, Value } from '../units/index.ts';

/** The number that stands for a value in a column. */
export function encode(value: Value, words: Words): number {
  if (typeof value === 'number') return value;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (typeof value === 'string') return words.code(value);
  return words.code(value.map((item) => encode(item, words)));
}

/** The value that a number in a column stands for. */
export function decode(number: number, kind: Kind, words: Words): Value {
  switch (kind.type) {
    case 'quantity':
    case 'date':
      return number;
    case 'flag':
      return number === 1;
    case 'text':
    case 'choice':
      return words.text(number);
    case 'list':
      return words.list(number).map((item) => decode(item, kind.of, words));
  }
}
