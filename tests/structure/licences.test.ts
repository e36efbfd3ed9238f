import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

// Licences that ask for no more than to be named: the Open Source Initiative's list, and SPDX for the identifiers.
const PERMISSIVE = ['0BSD', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', 'BlueOak-1.0.0', 'CC0-1.0', 'ISC', 'MIT', 'OFL-1.1', 'Python-2.0']; // prettier-ignore
// Tools whose own files would have to stay under their licence. They build and test; nothing of them is shipped.
const TOOLS = new Map([['MPL-2.0', /^(axe-core|lightningcss(-.*)?)$/]]);

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly optional?: boolean;
  readonly dev?: boolean;
}

const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as { packages: Record<string, Locked> }; // prettier-ignore
const locked = Object.entries(lock.packages).filter(([path]) => path !== '');
const asked = JSON.parse(readFileSync('package.json', 'utf8')) as Record<'dependencies' | 'devDependencies', Record<string, string>>; // prettier-ignore

describe('the packages', () => {
  it('are asked for in exact versions', () => {
    const versions = Object.entries({ ...asked.dependencies, ...asked.devDependencies });
    expect(versions.length).toBeGreaterThan(10);
    expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  it('are under permissive licences, but for tools that are not shipped', () => {
    expect(locked.length).toBeGreaterThan(50);
    const others = locked.filter(([path, { license = '', dev = false }]) => {
      const isTool = dev && TOOLS.get(license)?.test(path.replace(/^.*node_modules\//, ''));
      return !isPermissive(license) && !isTool;
    });
    expect(others.map(([path, { license }]) => `${path}: ${license ?? 'none named'}`)).toEqual([]);
  });

  it('are installed as they are locked, version and licence', () => {
    const differing = locked.flatMap(([path, { version, license, optional }]) => {
      const file = join(path, 'package.json');
      // What is meant for another system is not installed here.
      if (!existsSync(file)) return optional ? [] : [`${path} is not installed`];
      const installed = JSON.parse(readFileSync(file, 'utf8')) as Partial<Locked>;
      const isSame = installed.version === version && installed.license === license;
      return isSame ? [] : [`${path}: ${String(installed.version)}, ${String(installed.license)}`];
    });
    expect(differing).toEqual([]);
  });
});

function isPermissive(license: string): boolean {
  const choices = license.replace(/^\(|\)$/g, '').split(' OR ');
  return choices.some((choice) => choice.split(' AND ').every((one) => PERMISSIVE.includes(one)));
}
