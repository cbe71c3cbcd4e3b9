using HotShop.Physics.FuelGases;

namespace HotShop.Physics.Tests.FuelGases;

static class SomeGas
{
    /// <summary>Mixtures that burn, of up to all components, from a seed.</summary>
    public static IEnumerable<GasMixture> Mixtures(int seed, int count)
    {
        var chance = new Random(seed);
        for (var i = 0; i < count; i++)
        {
            var mixture = GasMixture.OfParts(GasComponent.All.Where(_ => chance.Next(2) == 0).Append(GasComponent.Methane).Select(c => KeyValuePair.Create(c, chance.NextDouble() + 0.001)));
            // Much oxygen in the fuel would leave it without need of air.
            if (mixture.OxygenNeedMoles > 0.01) yield return mixture;
        }
    }
}
