namespace HotShop.Simulator.Chance;

/// <summary>
/// What the seed decides about plant, instruments and people, and what no configuration of a service knows. Factors are 1 where
/// everything is as on the plate.
/// </summary>
public sealed record HiddenParameters
{
    /// <summary>Heat lost through walls and gaps against the drawing.</summary>
    public required double FurnaceLossFactor { get; init; }

    public required double GloryHoleLossFactor { get; init; }
    public required double FirstAnnealerLossFactor { get; init; }
    public required double SecondAnnealerLossFactor { get; init; }

    /// <summary>Gross, in MJ/m³ at 15 °C and 101.325 kPa.</summary>
    public required double CalorificMegajoulesPerCubicMetre { get; init; }

    /// <summary>Real state of the gas in the meters, in °C and mbar above the atmosphere.</summary>
    public required double GasCelsius { get; init; }

    public required double GasGaugeMillibar { get; init; }

    /// <summary>Air above what burning needs, as a fraction: the burners' efficiency.</summary>
    public required double FurnaceExcessAirFraction { get; init; }

    public required double GloryHoleExcessAirFraction { get; init; }

    /// <summary>Indicated over true volume.</summary>
    public required double FurnaceFlowFactor { get; init; }

    public required double GloryHoleFlowFactor { get; init; }
    public required double ShopMeterFactor { get; init; }

    /// <summary>Indicated minus true, in K.</summary>
    public required double CrownOffsetKelvin { get; init; }

    public required double GloryHoleOffsetKelvin { get; init; }
    public required double FirstAnnealerOffsetKelvin { get; init; }
    public required double SecondAnnealerOffsetKelvin { get; init; }

    /// <summary>Real full power, in kW.</summary>
    public required double FirstAnnealerKilowatts { get; init; }

    public required double SecondAnnealerKilowatts { get; init; }
    public required double PowerMeterFactor { get; init; }

    /// <summary>Real mean gather over the believed one, by size.</summary>
    public required double SmallGatherFactor { get; init; }

    public required double MediumGatherFactor { get; init; }
    public required double LargeGatherFactor { get; init; }

    /// <summary>Share of gathers that nobody logs, 0 to 0.15.</summary>
    public required double ForgottenShare { get; init; }

    /// <summary>Share of logged gathers entered with a neighbouring size.</summary>
    public required double WrongSizeShare { get; init; }

    /// <summary>Weighed over true mass of a charge.</summary>
    public required double ScaleFactor { get; init; }

    public required double MeltKilogramsPerCubicMetre { get; init; }

    /// <summary>Real heat content of the glass over the textbook's, which is good to about 3 %.</summary>
    public required double GlassHeatFactor { get; init; }

    /// <summary>How busy the crew is: gathers a day over the usual.</summary>
    public required double BusynessFactor { get; init; }

    /// <summary>Share of evenings on which batch is charged instead of cullet.</summary>
    public required double BatchEveningShare { get; init; }

    internal static HiddenParameters Drawn(int seed)
    {
        var draws = new Draws(seed, "hidden parameters");
        return new HiddenParameters
        {
            FurnaceLossFactor = draws.Between(0.95, 1.08),
            GloryHoleLossFactor = draws.Between(0.88, 1.15),
            FirstAnnealerLossFactor = draws.Between(0.90, 1.12),
            SecondAnnealerLossFactor = draws.Between(0.90, 1.12),
            CalorificMegajoulesPerCubicMetre = draws.Between(38.7, 40.1),
            GasCelsius = draws.Between(14, 22),
            GasGaugeMillibar = draws.Between(19, 23),
            FurnaceExcessAirFraction = draws.Between(0.08, 0.22),
            GloryHoleExcessAirFraction = draws.Between(0.04, 0.20),
            FurnaceFlowFactor = draws.Between(0.985, 1.015),
            GloryHoleFlowFactor = draws.Between(0.985, 1.015),
            ShopMeterFactor = draws.Between(0.99, 1.01),
            CrownOffsetKelvin = draws.Between(-4, 3),
            GloryHoleOffsetKelvin = draws.Between(-6, 4),
            FirstAnnealerOffsetKelvin = draws.Between(-3, 3),
            SecondAnnealerOffsetKelvin = draws.Between(-3, 3),
            FirstAnnealerKilowatts = draws.Between(7.4, 7.8),
            SecondAnnealerKilowatts = draws.Between(9.3, 9.9),
            PowerMeterFactor = draws.Between(0.99, 1.01),
            SmallGatherFactor = draws.Between(0.85, 1.15),
            MediumGatherFactor = draws.Between(0.85, 1.15),
            LargeGatherFactor = draws.Between(0.85, 1.15),
            ForgottenShare = draws.Between(0, 0.15),
            WrongSizeShare = draws.Between(0, 0.05),
            ScaleFactor = draws.Between(0.995, 1.005),
            MeltKilogramsPerCubicMetre = draws.Between(2330, 2390),
            GlassHeatFactor = draws.Between(0.98, 1.02),
            BusynessFactor = draws.Between(0.95, 1.12),
            BatchEveningShare = draws.Between(0, 0.5),
        };
    }
}
