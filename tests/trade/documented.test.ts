import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CATALOG } from '../../src/trade/index.ts';

const FOLDER = new URL('../../src/trade/', import.meta.url);
const DOCUMENTED = /(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*)?export function (\w+)/g;

/** Doc comment of every exported function of the layer, by name. */
const DOCS = new Map(
  readdirSync(FOLDER)
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => [...readFileSync(new URL(file, FOLDER), 'utf8').matchAll(DOCUMENTED)])
    .map(([, doc, name]) => [name!, doc ?? '']),
);

/** What a doc comment of a trade function lacks. */
function lacking(doc: string, parameters: readonly string[]): string[] {
  const named = [...doc.matchAll(/@param (\w+) - .+ \[[^\]]+\]\s*$/gm)].map(([, name]) => name);
  return [
    ...(named.length === parameters.length ? [] : ['a @param with a unit for each argument']),
    ...(/@returns .+ \[[^\]]+\]\s*$/m.test(doc) ? [] : ['@returns with a unit']),
    ...(/@source \S+/.test(doc) ? [] : ['@source']),
    ...(/@check (?:hand-worked: )?.+ → .+/.test(doc) ? [] : ['@check']),
    ...(/@check (?!hand-worked)(?!.*\(.+\))/.test(doc) ? ['where its @check is published'] : []),
  ];
}

const COMPLETE = `
 * Meaning.
 *
 * @param side - Side. [m]
 * @returns Area. [m^2]
 *
 * @source geometry
 * @check hand-worked: 2 m → 4 m^2
 `;

describe('the documentation check', () => {
  it('passes a complete comment', () => {
    expect(lacking(COMPLETE, ['side'])).toEqual([]);
  });

  it.each([
    { cut: ' * @source geometry\n', lack: '@source' },
    { cut: ' * @check hand-worked: 2 m → 4 m^2\n', lack: '@check' },
    { cut: ' [m^2]', lack: '@returns with a unit' },
    { cut: ' * @returns Area. [m^2]\n', lack: '@returns with a unit' },
    { cut: ' [m]\n', lack: 'a @param with a unit for each argument' },
    { cut: 'hand-worked: ', lack: 'where its @check is published' },
  ])('refuses one without “$cut”', ({ cut, lack }) => {
    expect(COMPLETE).toContain(cut);
    expect(lacking(COMPLETE.replace(cut, cut.endsWith('\n') ? '\n' : ''), ['side'])).toContain(
      lack,
    );
  });
});

describe('every trade function', () => {
  it('is met: there are functions to check', () => {
    expect(CATALOG.size).toBeGreaterThan(0);
    expect(DOCS.size).toBeGreaterThanOrEqual(CATALOG.size);
  });

  it.each([...CATALOG.values()].map((rule) => ({ name: rule.name, rule })))(
    'documents $name: units, source and check',
    ({ rule }) => {
      const camel = rule.name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
      expect(rule.apply.name).toBe(camel);
      const doc = DOCS.get(camel);
      expect(doc, `${camel} is exported from src/trade`).toBeDefined();
      expect(
        lacking(
          doc!,
          rule.parameters.map(({ name }) => name),
        ),
      ).toEqual([]);
    },
  );

  it.each([...CATALOG.values()].map((rule) => ({ name: rule.name, rule })))(
    'gives $name one source, in its comment and on screen',
    ({ rule }) => {
      const doc = DOCS.get(rule.apply.name) ?? '';
      expect(/@source (.+)/.exec(doc)?.[1]?.trim()).toBe(rule.source);
    },
  );
});
