import { describe, expect, it } from 'vitest';
import { readDirection } from '../../src/units/index.ts';

describe('a direction', () => {
  it.each([
    [['S', 's', 'South', ' south ', 'to the south', 'S.', 'Süd', 'sur', 'leans to S'], 'S'],
    [['NE', 'north-east', 'North East', 'Nordost'], 'NE'],
    [['Street', 'street', 'toward the street', 'towards street'], 'street'],
    [['Downhill', 'down hill'.replace(' ', '')], 'downhill'],
    [['the old oak', '  the  old oak'], 'the old oak'],
    [['SSE'], 'SSE'],
    [[''], ''],
  ] as const)('is one however it is written: %j', (written, read) => {
    for (const text of written) expect(readDirection(text)).toBe(read);
  });
});
