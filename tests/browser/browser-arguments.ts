/** How the browser starts: with nothing that talks to the outside by itself. */
export const browserArguments: readonly string[] = [
  // As root, and in most containers, Chromium's own sandbox does not start.
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--no-first-run',
];
