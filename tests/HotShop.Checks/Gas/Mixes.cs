using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Gas;

static class Mixes
{
    public static GasMixture Of(params (string Name, double Part)[] parts) => GasMixture.OfParts(parts.Select(p => KeyValuePair.Create(GasComponent.Find(p.Name)!, p.Part)));

    public static GasMixture Pure(string name) => GasMixture.Pure(GasComponent.Find(name)!);

    public static GasMixture Lean => GasProfile.NaturalGas.Mixture;

    public static GasMixture LeanWithHydrogen(double share) => Lean.With(Pure("hydrogen"), share);
}
