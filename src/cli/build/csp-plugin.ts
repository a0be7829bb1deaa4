import type { Plugin } from 'vite';
import { policyForMeta } from '../content-security-policy.ts';

/**
 * Writes the Content-Security-Policy into the built page as its first meta element. Not in
 * development: there the dev server injects styles and scripts that the policy forbids.
 */
export function contentSecurityPolicy(): Plugin {
  return {
    name: 'gatecall-content-security-policy',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: () => [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: policyForMeta },
          injectTo: 'head-prepend',
        },
      ],
    },
  };
}
