interface ScriptPolicy {
  createScriptURL(address: string): string;
}

interface ScriptPolicies {
  createPolicy(name: string, rules: ScriptPolicy): ScriptPolicy;
}

let policy: ScriptPolicy | undefined;

/** The address of a script of ours, as the page takes it for a thread: no script from anywhere else is let in. */
export function ownScript(address: string): string {
  // Each policy may be made once.
  policy ??= (globalThis as { trustedTypes?: ScriptPolicies }).trustedTypes?.createPolicy(
    'backplumb',
    { createScriptURL: ownAddress },
  );
  return policy?.createScriptURL(address) ?? ownAddress(address);
}

function ownAddress(address: string): string {
  const { origin, href } = new URL(address, location.href);
  if (origin !== location.origin) throw new Error(`${href} is no script of this page.`);
  return href;
}
