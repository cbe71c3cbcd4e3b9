// The colour of a hot body. The service computes it from Planck's law and sends it as a table with every page;
// the browser only looks it up between two rows.
const table = JSON.parse(document.getElementById('glow-table')?.textContent ?? '{"stepCelsius":10,"colours":["#000000"]}');
const rows = table.colours.map(c => [1, 3, 5].map(i => parseInt(c.slice(i, i + 2), 16)));

export function glow(temperatureCelsius) {
  const place = Math.min(rows.length - 1, Math.max(0, temperatureCelsius / table.stepCelsius));
  const low = rows[Math.floor(place)], high = rows[Math.ceil(place)], share = place - Math.floor(place);
  return `rgb(${low.map((c, i) => Math.round(c + (high[i] - c) * share)).join(',')})`;
}
