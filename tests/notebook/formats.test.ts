import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FORMAT, fromJson, readNotebook, toJson } from '../../src/notebook/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';

const FOLDER = join('tests', 'notebook', 'formats');
const formats = readdirSync(FOLDER).map((name) => Number(name.replace('.json', '')));

function fixture(format: number): Record<string, unknown> {
  const text = readFileSync(join(FOLDER, `${String(format)}.json`), 'utf8');
  return JSON.parse(text) as Record<string, unknown>;
}

describe('a notebook file of every format there ever was', () => {
  it('is kept here', () => {
    expect(formats.sort((a, b) => a - b)).toEqual(
      Array.from({ length: FORMAT }, (_, at) => at + 1),
    );
  });

  it.each(formats)('opens whole from format %i', (format) => {
    const json = fixture(format);
    expect(json['format']).toBe(format);
    const document = fromJson(json);
    if (isProblem(document)) throw new Error(sentence(document));
    const latest = fixture(FORMAT);
    const upgraded = JSON.parse(JSON.stringify(toJson(document))) as Record<string, unknown>;
    for (const one of [latest, upgraded]) delete one['own'];
    expect(upgraded).toEqual(latest);
  });

  it('gives a notebook of format 1 no columns of the user’s own', () => {
    const read = readNotebook(fixture(1));
    expect(isProblem(read) ? read : read.document.own).toEqual(new Map());
  });
});

describe('a notebook of a newer format', () => {
  it('is read as far as it is known, with a message, and is never changed into ours', () => {
    const json = { ...fixture(FORMAT), format: FORMAT + 1, quotes: [['a', 1]] };
    const read = readNotebook(json);
    if (isProblem(read)) throw new Error(sentence(read));
    expect(read.document.name).toBe('Oak Street');
    expect(read.newer?.found).toContain('newer version');
    expect(fromJson(json)).toEqual(read.newer);
  });
});

describe('a damaged notebook', () => {
  it('opens with a list of what was set aside', () => {
    const json = fixture(FORMAT);
    json['inputs'] = [['fence_height', '6 ft'], ['mix', 5], ['fence_height', '5 ft']]; // prettier-ignore
    json['sheets'] = [{ sheet: 'posts', rows: [{ id: 'r1', cells: [['post', '1']] }, { id: 'r2', cells: 7 }, { id: 'r1', cells: [] }] }]; // prettier-ignore
    const read = readNotebook(json);
    if (isProblem(read)) throw new Error(sentence(read));
    expect(read.setAside).toEqual([
      'inputs, 2',
      'inputs, a second “fence_height”',
      'sheets, 1, rows, 2',
      'sheets, 1, a second row of one id',
    ]);
    expect(read.document.inputs).toEqual(new Map([['fence_height', '6 ft']]));
    expect(read.document.sheets.get('posts')).toEqual([{ id: 'r1', cells: new Map([['post', '1']]) }]); // prettier-ignore
  });
});
