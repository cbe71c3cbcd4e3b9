// Which glass the pot is reckoned with: its points, its density, the heat it takes, and where the figures come from.
import { html } from './svg.js';
import { both } from './units.js';

export function glassRows(glass) {
  const share = `${Math.round(glass.batchYield * 1000) / 10} %`, at = both('temperature', glass.meltAtCelsius);
  return [
    ['Glass', glass.name],
    ['Melts at', `${both('temperature', glass.meltingPointCelsius)} (viscosity 10² dPa·s)`],
    ['Works at', `${both('temperature', glass.workingPointCelsius)} (10⁴ dPa·s)`],
    ['Softens at', `${both('temperature', glass.softeningPointCelsius)} (10⁷·⁶ dPa·s)`],
    ['Annealing point', `${both('temperature', glass.annealingPointCelsius)} (10¹³ dPa·s)`],
    ['Strain point', `${both('temperature', glass.strainPointCelsius)} (10¹⁴·⁵ dPa·s)`],
    [`Density at ${at}`, `${Math.round(glass.meltKgPerM3)} kg/m³ ± 1.5 to 3 %; cold ${Math.round(glass.coldKgPerM3)}`],
    [`Viscosity at ${at}`, `${Math.round(glass.viscosityPaS)} Pa·s`],
    [`Heat to ${at}`, `${glass.culletKwhPerKg.toFixed(2)} kWh/kg from cullet, ± 3 %; ${glass.batchKwhPerKg.toFixed(2)} from batch`],
    ['Glass left of batch', `${share}, ${glass.batchYieldIsUsual ? 'the usual: write your recipe or yield in the configuration' : 'as configured'}`],
    ['From', glass.source],
  ].map(([a, b]) => html('tr', {}, html('th', { scope: 'row' }, a), html('td', {}, b)));
}
