// Lets a page open without the service. Browsers allow the worker that does it on https and on this very computer only.
export const canOpenOffline = () => 'serviceWorker' in navigator;

export function keepForOffline() {
  if (!canOpenOffline()) return;
  // After the page has what it needs: a phone on a slow line shows its numbers first.
  const register = () => navigator.serviceWorker.register('/worker.js').catch(() => { /* the page works as before; it only cannot be opened without the service */ });
  if (document.readyState === 'complete') register(); else addEventListener('load', register);
}
