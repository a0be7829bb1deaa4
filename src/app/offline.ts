/**
 * The service worker keeps the app on the device. A new version is fetched in the background and then
 * waits: the app decides when to offer it, and only the pilot's yes lets it in.
 */
import { registerSW } from 'virtual:pwa-register';

/**
 * Registers the service worker after the page has loaded. Does nothing in development, or where the
 * browser has no service workers (a private window, an address without https): the app then works as
 * usual but needs its server at each start.
 *
 * @param onReady called when a new version waits, or another tab let it in. `apply` loads it, which
 *   reloads the page; call it only when no session runs.
 * @param onOfflineReady called once, at the first visit, when everything is on the device.
 */
export function watchForUpdate(
  onReady: (apply: () => void) => void,
  onOfflineReady: () => void = () => {},
): void {
  if (import.meta.env.DEV) return;
  let accepted = false;
  const letIn = registerSW({
    onNeedRefresh() {
      onReady(() => {
        accepted = true;
        void letIn();
      });
    },
    onNeedReload() {
      // The new version is in charge. Reload if the pilot said so here; when it was in another tab, this
      // one may be in the middle of a session: offer it again.
      if (accepted) location.reload();
      else onReady(() => location.reload());
    },
    onOfflineReady,
    // Not being able to keep the app on the device takes nothing away from using it now.
    onRegisterError() {},
  });
}
