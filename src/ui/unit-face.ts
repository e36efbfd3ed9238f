/** A unit as it is printed: `ft³` for `ft^3`, `°` for `deg`. */
export function unitFace(unit: string): string {
  return unit
    .replace(/\bdeg\b/g, '°')
    .replaceAll('^2', '²')
    .replaceAll('^3', '³')
    .replaceAll('degC', '°C')
    .replaceAll('degF', '°F')
    .replaceAll('*', '·');
}

/** A value with its unit: `3 3/8 in`, `2.68°`, or the value alone where it has no unit. */
export function withUnit(text: string, unit: string): string {
  if (unit === '' || text === '') return text;
  return unit === 'deg' ? `${text}°` : `${text} ${unitFace(unit)}`;
}
