// The live stream. It mends itself for weeks: a closed or silent stream is opened again, and whoever listens is told
// to ask for everything anew after each break, because events in between are gone. isBehind: what was read before is old already.
const SILENT_AFTER_MS = 45_000, TRY_AGAIN_MS = 3_000, KINDS = ['reading', 'derived', 'alarm', 'log', 'mode'];

export function listen({ onEvent, onBack, onState, isBehind = false }) {
  let source = null, lastHeard = performance.now(), wasCut = isBehind, state = '';

  const tell = next => { if (next !== state) { state = next; onState(next); } };
  const open = () => {
    source?.close();
    source = new EventSource('/api/live');
    lastHeard = performance.now();
    source.onopen = () => { tell('connected'); lastHeard = performance.now(); if (wasCut) onBack(); wasCut = false; };
    source.onerror = () => { wasCut = true; tell('cut-off'); };
    for (const kind of KINDS) source.addEventListener(kind, event => {
      lastHeard = performance.now();
      let data;
      try { data = JSON.parse(event.data); } catch { return; }
      for (const item of Array.isArray(data) ? data : [data]) onEvent(kind, item);
    });
    for (const kind of ['hello', 'heartbeat']) source.addEventListener(kind, () => { lastHeard = performance.now(); });
  };

  open();
  setInterval(() => {
    const silent = performance.now() - lastHeard > SILENT_AFTER_MS;
    if (source.readyState === EventSource.CLOSED || silent) { wasCut = true; if (silent) tell('cut-off'); open(); }
  }, TRY_AGAIN_MS);
  addEventListener('offline', () => { wasCut = true; tell('cut-off'); });
  addEventListener('online', open);
}
