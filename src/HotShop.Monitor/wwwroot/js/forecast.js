// What is expected if things go on as they are. No model: the band is what the last day itself did over the same time ahead.
const BAND_SHARE = .95, STEPS = 12;

/** Value between two points of a series at t; null outside it or across a gap longer than gapMs. */
export function valueAt(series, t, gapMs = Infinity) {
  if (!series.length || t < series[0].t || t > series.at(-1).t) return null;
  let low = 0, high = series.length - 1;
  while (high - low > 1) { const middle = (low + high) >> 1; if (series[middle].t <= t) low = middle; else high = middle; }
  const a = series[low], b = series[high];
  if (b.t - a.t > gapMs) return null;
  return b.t === a.t ? a.v : a.v + (b.v - a.v) * (t - a.t) / (b.t - a.t);
}

/**
 * Half-width of the 95 % band at a distance ahead: of all pairs of the past that far apart, how much 95 % of them differ.
 * A plan, where there is one, is taken off first. Needs a history at least twice as long as the distance, else the last sure width grows on.
 */
export function spreadAhead(past, plan) {
  const rest = past.map(p => ({ t: p.t, v: p.v - (plan ? valueAt(plan, p.t) ?? p.v : 0) }));
  const reach = rest.length ? (rest.at(-1).t - rest[0].t) / 2 : 0, known = [[0, 0]];
  for (let i = 1; i <= STEPS; i++) {
    const ahead = reach * i / STEPS, differences = [];
    for (const p of rest) { const later = valueAt(rest, p.t + ahead); if (later !== null) differences.push(Math.abs(later - p.v)); }
    if (differences.length < 8) break;
    differences.sort((a, b) => a - b);
    known.push([ahead, Math.max(known.at(-1)[1], differences[Math.floor((differences.length - 1) * BAND_SHARE)])]);
  }
  return ahead => {
    const i = known.findIndex(([d]) => d >= ahead);
    if (i < 0) return known.at(-1)[1] * Math.sqrt(ahead / (known.at(-1)[0] || ahead));
    if (i === 0) return known[0][1];
    const [d0, s0] = known[i - 1], [d1, s1] = known[i];
    return s0 + (s1 - s0) * (ahead - d0) / (d1 - d0);
  };
}

/** [{t, v, low, high}] from now on, along the plan where there is one, else level; empty when nothing can be expected. */
export function expected({ past, plan, nowMs, untilMs, steady }) {
  const last = past.at(-1);
  if (!last || (!steady && !plan)) return [];
  const spread = spreadAhead(past.filter(p => p.t > nowMs - 24 * 3600e3), plan), points = [];
  for (let i = 0; i <= 40; i++) {
    const t = nowMs + (untilMs - nowMs) * i / 40, v = plan ? valueAt(plan, t) : last.v;
    if (v === null) break;
    const s = spread(t - nowMs);
    points.push({ t, v, low: v - s, high: v + s });
  }
  return points;
}
