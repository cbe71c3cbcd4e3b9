// The pot as the pages draw it, from what the service says of it.
import { get } from './api.js';

/** Null where the appliance has no pot. Numbers the service does not know stay null. hours: how much history to fetch. */
export async function readPot(appliance, hours) {
  let answer;
  try { answer = await get(`/api/pots/${encodeURIComponent(appliance.appliance)}${hours ? `?hours=${hours}` : ''}`); }
  catch (problem) { if (problem.status === 404) return null; throw problem; }
  const sizes = Array.isArray(answer.gathersLeft) ? answer.gathersLeft : [];
  return {
    ...answer,
    capacityKg: answer.fullKg, fullDepthCm: answer.heightCm, workedHeelKg: answer.heelKg,
    sizes: sizes.map(s => ({ size: s.size, massKg: s.massKg, left: s.left, leftLow: s.leftLow95, leftHigh: s.leftHigh95 })),
    history: (answer.history ?? []).map(h => ({ t: Date.parse(h.time), v: h.massKg, low: h.massKgLow95, high: h.massKgHigh95 })),
  };
}
