import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const TRADE = 'src/trade';
const catalogs = readdirSync(TRADE).filter((name) => /^catalog-.*\.ts$/.test(name));
const rules = catalogs.flatMap(functionsTakenBy);

describe('every trade function that a formula may call', () => {
  it('was found', () => {
    expect(rules.length).toBeGreaterThan(30);
  });

  it.each(['@source', '@check', '@returns'])('has its %s', (tag) => {
    expect(rules.filter(({ doc }) => !doc.includes(`${tag} `)).map(({ name }) => name)).toEqual([]);
  });

  it('says the unit of every number that goes in or comes out', () => {
    const bare = rules.flatMap(({ name, doc }) =>
      [...doc.matchAll(/@(?:param|returns)(?:(?!@\w)[^])*/g)]
        .map(([text]) => text.replace(/[\s*/]+/g, ' ').trim())
        .filter((text) => !/\[[^\]]+\]/.test(text))
        .map((text) => `${name}: ${text}`),
    );
    expect(bare).toEqual([]);
  });
});

interface TradeFunction {
  readonly name: string;
  readonly doc: string;
}

function functionsTakenBy(catalog: string): TradeFunction[] {
  return parsed(catalog)
    .statements.filter(ts.isImportDeclaration)
    .flatMap(({ importClause, moduleSpecifier }) => {
      const bindings = importClause?.namedBindings;
      if (!bindings || !ts.isNamedImports(bindings) || !ts.isStringLiteral(moduleSpecifier))
        return [];
      if (!moduleSpecifier.text.startsWith('./')) return [];
      // What describes parameters works nothing out; what writes the way down repeats its rule.
      if (['./takes.ts', './on-the-way.ts'].includes(moduleSpecifier.text)) return [];
      const names = new Set(bindings.elements.map(({ name }) => name.text));
      return functionsIn(moduleSpecifier.text).filter(({ name }) => names.has(name));
    });
}

function functionsIn(file: string): TradeFunction[] {
  return parsed(file)
    .statements.filter(ts.isFunctionDeclaration)
    .map((node) => ({
      name: node.name?.text ?? '',
      doc: ts
        .getJSDocCommentsAndTags(node)
        .map((comment) => comment.getFullText())
        .join('\n'),
    }));
}

function parsed(file: string): ts.SourceFile {
  const text = readFileSync(join(TRADE, file), 'utf8');
  return ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
}
