import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** Paper of the day theme: the frame around an installed app. */
const paper = '#f6f2e9';

/**
 * The web app manifest and the service worker: everything the build makes is kept on the device at the
 * first visit, so later visits need no network. A new version waits until the app lets it in
 * (`src/app/offline.ts`); it never takes over a running session by itself.
 */
export function offline(): Plugin[] {
  return VitePWA({
    strategies: 'generateSW',
    registerType: 'prompt',
    // The app registers the worker itself: an injected script would be one more file to race with.
    injectRegister: null,
    manifest: {
      id: './',
      name: 'Gatecall',
      short_name: 'Gatecall',
      description: 'Gate values, checklists and decision rules of a procedure flown by hand, kept in memory.',
      start_url: './',
      scope: './',
      display: 'standalone',
      theme_color: paper,
      background_color: paper,
      lang: 'en',
      icons: [
        { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
        { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
        { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
      ],
    },
    includeManifestIcons: false,
    workbox: {
      globPatterns: ['**/*.{html,js,css,woff2,svg,png,webmanifest,yaml,json}'],
      // The first visit is served by the worker as soon as it is in place, so that parts loaded later
      // (the deck parser, the analysis) come from the device and not from the network.
      clientsClaim: true,
      skipWaiting: false,
      cleanupOutdatedCaches: true,
      inlineWorkboxRuntime: true,
      sourcemap: false,
    },
  });
}
