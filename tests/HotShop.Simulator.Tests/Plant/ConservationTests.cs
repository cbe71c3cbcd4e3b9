using HotShop.Simulator.Faults;
using HotShop.Simulator.Plant;
using NodaTime;

namespace HotShop.Simulator.Tests;

public class ConservationTests
{
    // Five days with charges of batch and cullet, and everything that can go wrong with heat.
    static readonly FaultOrder[] Troubles =
    [
        Run.Fault(FaultKind.FlameOutWithGas, Quillmere.GloryHole, 4, 0.4),
        Run.Fault(FaultKind.ElementFailed, Quillmere.FirstAnnealer, 8, 2),
        Run.Fault(FaultKind.DoorLeftOpen, Quillmere.SecondAnnealer, 20, 0.3),
        Run.Fault(FaultKind.ColdCharge, Quillmere.Furnace, 26, 0.1),
        Run.Fault(FaultKind.FlameOutWithGas, Quillmere.Furnace, 30, 1),
        Run.Fault(FaultKind.PowerCut, Quillmere.Shop, 50, 1),
        Run.Fault(FaultKind.GasSupplyLost, Quillmere.Shop, 60, 0.5),
        Run.Fault(FaultKind.Overheat, Quillmere.Furnace, 70, 2),
        Run.Fault(FaultKind.CoupleOpen, Quillmere.Furnace, 80, 0.5),
    ];

    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void Every_kilojoule_that_enters_is_stored_or_has_left(int seed)
    {
        var studio = Run.Studio(seed, Troubles);
        var plant = studio.Plant;
        var storedAtStart = Stored(plant);
        studio.Advance(Run.At(5 * 24));

        var parts = new[] { plant.Furnace.Ledger, plant.GloryHole.Ledger, plant.FirstAnnealer.Ledger, plant.SecondAnnealer.Ledger };
        var storedAtEnd = Stored(plant);
        for (var i = 0; i < parts.Length; i++)
        {
            var (entered, left) = (parts[i].InKilojoules, parts[i].OutKilojoules);
            Assert.True(entered > 100_000, "the appliance has worked");
            Assert.Equal(0, (entered - left - (storedAtEnd[i] - storedAtStart[i])) / entered, 1e-9);
        }
    }

    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void Every_kilogram_charged_is_in_the_pot_taken_or_gone_as_gas(int seed)
    {
        var studio = Run.Studio(seed, Troubles);
        var pot = studio.Plant.Furnace.Pot;
        var atStart = pot.GlassKilograms;
        studio.Advance(Run.At(5 * 24));

        var held = pot.MeltKilograms + pot.Heap.GlassKilograms + pot.Heap.BoundGasKilograms;
        Assert.True(pot.ChargedKilograms > 100);
        Assert.Equal(0, (atStart + pot.ChargedKilograms - pot.TakenKilograms - pot.GasKilograms - held) / pot.ChargedKilograms, 1e-9);
    }

    // Sand 60, soda ash 20, limestone 10, dolomite 6, feldspar 4 kg: 15.56 % leave as carbon dioxide (standard atomic weights).
    [Fact]
    public void Batch_leaves_its_yield_of_glass_and_the_rest_as_gas()
    {
        var (pot, ledger) = (new GlassPot(new GlassEnthalpy(1), 2360), new HeatLedger());
        pot.Fill(100, 1150);
        pot.Charge(culletKilograms: 0, batchKilograms: 10, celsius: 20, ledger);
        for (var step = 0; step < 3600; step++) pot.Step(2, 1200, ledger);

        Assert.True(pot.Heap.IsEmpty);
        Assert.Equal(108.444, pot.MeltKilograms, 1e-6);
        Assert.Equal(1.556, pot.GasKilograms, 1e-6);
    }

    // 20 kg of cold cullet into 100 kg at 1200 °C with no heat supplied: 1025 °C (heat content after Sharp and Ginther 1951).
    [Fact]
    public void Cold_cullet_cools_the_melt_as_the_heat_contents_say()
    {
        var (glass, ledger) = (new GlassEnthalpy(1), new HeatLedger());
        var pot = new GlassPot(glass, 2360);
        pot.Fill(100, 1200);
        pot.Charge(20, 0, 20, ledger);
        var heat = pot.StoredKilojoules;
        Assert.Equal(1025, glass.Celsius(heat / 120), 1.0);
    }

    static double[] Stored(StudioPlant plant) =>
        [plant.Furnace.StoredKilojoules, plant.GloryHole.StoredKilojoules, plant.FirstAnnealer.StoredKilojoules, plant.SecondAnnealer.StoredKilojoules];
}
