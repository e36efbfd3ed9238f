import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** What keeps Chromium quiet, offline and able to run as any user. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const VARIABLES = ['BACKPLUMB_CHROMIUM', 'CHROMIUM_PATH', 'CHROME_PATH'];
const INSTALL = 'apt-get update && apt-get install -y --no-install-recommends';
const PACKAGES = ['chromium', 'fonts-dejavu-core'];

/**
 * The path of a Chromium or Chrome: from the environment, else from its usual places, else newly
 * installed with the system's package manager. Where there is none the run ends with one line that
 * says what to install.
 */
export function findChromium(): string {
  const found = fromEnvironment() ?? usualPlaces().find(existsSync) ?? installed();
  if (found === undefined) return stop(adviceFor(process.platform));
  // The settings are read once for each group of tests; the search, and an install, happen once.
  process.env['BACKPLUMB_CHROMIUM'] = found;
  return found;
}

function fromEnvironment(): string | undefined {
  for (const variable of VARIABLES) {
    const path = process.env[variable];
    if (!path) continue;
    if (existsSync(path)) return path;
    return stop(`${variable} names “${path}”, and there is no such file. Correct it or unset it.`);
  }
  return undefined;
}

function usualPlaces(): string[] {
  switch (process.platform) {
    case 'darwin':
      return ['', process.env['HOME'] ?? ''].flatMap((home) =>
        ['Chromium', 'Google Chrome'].map(
          (name) => `${home}/Applications/${name}.app/Contents/MacOS/${name}`,
        ),
      );
    case 'win32':
      return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA']
        .map((variable) => process.env[variable])
        .filter((folder) => folder !== undefined)
        .flatMap((folder) =>
          ['Chromium', 'Google\\Chrome'].map(
            (name) => `${folder}\\${name}\\Application\\chrome.exe`,
          ),
        );
    default:
      return [...(process.env['PATH'] ?? '').split(delimiter), '/usr/bin', '/opt/google/chrome']
        .filter((folder) => folder !== '')
        .flatMap((folder) =>
          ['chromium', 'google-chrome-stable', 'google-chrome', 'chrome'].map((name) =>
            join(folder, name),
          ),
        );
  }
}

function installed(): string | undefined {
  if (process.platform !== 'linux' || !existsSync('/usr/bin/apt-get')) return undefined;
  const sudo = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  process.stderr.write(
    `No Chromium here yet; installing ${PACKAGES.join(' and ')} with apt-get.\n`,
  );
  try {
    for (const words of [
      ['apt-get', 'update', '-qq'],
      ['apt-get', 'install', '-y', '-qq', '--no-install-recommends', ...PACKAGES],
    ]) {
      const [command = '', ...rest] = [...sudo, ...words];
      execFileSync(command, rest, { env: environment, stdio: 'ignore' });
    }
  } catch {
    return undefined;
  }
  return usualPlaces().find(existsSync);
}

function adviceFor(platform: NodeJS.Platform): string {
  if (platform === 'linux')
    return `Install Chromium to run the browser tests: ${INSTALL} ${PACKAGES.join(' ')} (as root), or set CHROMIUM_PATH to one.`;
  return 'Install Chromium or Google Chrome to run the browser tests, or set CHROMIUM_PATH to one.';
}

// One line and no stack: whoever reads it has to install something, not mend code.
function stop(line: string): never {
  process.stderr.write(`${line}\n`);
  process.exit(1);
}
