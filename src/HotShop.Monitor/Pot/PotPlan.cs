using HotShop.Monitor.Configuration;
using HotShop.Physics.Pot;

namespace HotShop.Monitor.Pot;

/// <summary>A pot as configured: its inside, its heel and what a gather of each size weighs.</summary>
public sealed record PotPlan(string Appliance, GlassMass Glass, PotOptions Options)
{
    public static PotPlan? Of(AppliancePlan appliance) =>
        appliance.Options.Pot is { } options ? new PotPlan(appliance.Id, new GlassMass(Geometry(options)), options) : null;

    static CrucibleGeometry Geometry(PotOptions pot)
    {
        double radius = pot.DiameterCentimetres / 200, height = pot.HeightCentimetres / 100;
        return pot.Shape switch
        {
            "cone" => new TaperedPot(pot.BottomDiameterCentimetres!.Value / 200, radius, height),
            "rounded" => new RoundedPot(radius, pot.CornerRadiusCentimetres!.Value / 100, height),
            _ => new CylinderPot(radius, height),
        };
    }
}
