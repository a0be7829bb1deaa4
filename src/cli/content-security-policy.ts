/**
 * What the page may load: its own files and nothing else. No inline script or style, no code from
 * strings, no other origin. `data:` and `blob:` pictures are the plates the app draws for itself.
 */
const directives = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
] as const;

/** For `<meta http-equiv>`, so that the policy also holds where a host sends no headers. */
export const policyForMeta = directives.join('; ');

/** For the response header; `frame-ancestors` is ignored in a `<meta>` and so stands only here. */
export const policyForHeader = [...directives, "frame-ancestors 'none'"].join('; ');
