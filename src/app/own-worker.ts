/** Starts workers under the page's policy for script addresses: only our own scripts, only from where the page came from. */
type ScriptPolicy = { createScriptURL: (url: string) => URL };
type PolicyFactory = {
  createPolicy: (name: string, rules: { createScriptURL: (url: string) => string }) => ScriptPolicy;
};

/** The name stands in the policy that the server sends. */
const POLICY_NAME = 'shearsight';

let policy: ScriptPolicy | null = null;

/** Starts a module worker from the address of its script. */
export function startWorker(url: string): Worker {
  return new Worker(trustedScript(url), { type: 'module' });
}

/** An address of our own as the browser wants it, to start a worker from. */
export function trustedScript(url: string): URL | string {
  const factory = (globalThis as { trustedTypes?: PolicyFactory }).trustedTypes;
  if (factory === undefined) return ownScript(url);
  policy ??= factory.createPolicy(POLICY_NAME, { createScriptURL: ownScript });
  return policy.createScriptURL(url);
}

function ownScript(url: string): string {
  const full = new URL(url, location.href);
  if (full.origin !== location.origin)
    throw new Error(`Shearsight bug: a script from elsewhere, ${full.origin}`);
  return full.href;
}
