import { build } from 'vite';

/** One module of the app, with all it imports, as a script that leaves its exports under `name`. */
export async function bundled(entry: string, name: string): Promise<string> {
  const result = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, target: 'es2022', lib: { entry, name, formats: ['iife'] } },
  });
  const output = [result].flat()[0];
  if (!output || !('output' in output)) throw new Error(`Nothing was built from ${entry}.`);
  // Declared with `var`, which a script evaluated by the debugger leaves on the page.
  return output.output[0].code;
}
