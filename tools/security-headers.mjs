/**
 * The headers every answer carries, written down once: tools/serve.mjs sends them, the build writes them into
 * dist/_headers for static hosts that read such a file, and puts the policy into index.html as well, for hosts that do not.
 *
 * 'wasm-unsafe-eval' is the one concession: the solids come from a WebAssembly module. Script addresses that the browser
 * guards (workers, the service worker) go through one Trusted Types policy of this name.
 */
export const trustedTypesPolicy = 'shearsight';

const directives = [
  ['default-src', "'none'"],
  ['script-src', "'self' 'wasm-unsafe-eval'"],
  ['style-src', "'self'"],
  ['img-src', "'self' blob: data:"],
  ['font-src', "'self'"],
  ['connect-src', "'self'"],
  ['worker-src', "'self'"],
  ['manifest-src', "'self'"],
  ['base-uri', "'none'"],
  ['form-action', "'none'"],
  ['frame-ancestors', "'none'"],
  ['require-trusted-types-for', "'script'"],
  ['trusted-types', trustedTypesPolicy],
];

/** Browsers refuse these in a meta element and say so on the console. */
const onlyInHeaders = new Set(['frame-ancestors']);

const written = (list) => list.map(([name, value]) => `${name} ${value}`).join('; ');

export const contentSecurityPolicy = written(directives);
export const metaContentSecurityPolicy = written(directives.filter(([name]) => !onlyInHeaders.has(name)));

export const securityHeaders = Object.freeze({
  'Content-Security-Policy': contentSecurityPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
});

/** The `_headers` file that several static hosts read. */
export function headersFile() {
  const lines = Object.entries(securityHeaders).map(([name, value]) => `  ${name}: ${value}`);
  return ['/*', ...lines, '/assets/*', '  Cache-Control: public, max-age=31536000, immutable', ''].join('\n');
}
