import { policyForHeader } from '../content-security-policy.ts';

/** Sent with every answer, errors too. */
export const securityHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policyForHeader,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
};

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.yaml': 'application/yaml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

/** The media type by a file's ending (with its dot); bytes without a meaning when unknown. */
export const typeOf = (ending: string): string => types[ending] ?? 'application/octet-stream';

/** The build puts a hash of the content into these names, so they never change. */
export const isHashed = (path: string): boolean => /^\/assets\/.+-[\w-]{8}\.\w+$/.test(path);
