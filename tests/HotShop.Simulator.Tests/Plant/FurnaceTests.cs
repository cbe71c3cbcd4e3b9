namespace HotShop.Simulator.Tests.Plant;

public class FurnaceTests
{
    // Common practice: the next charge goes in when the last has melted flat, 45 to 90 min.
    [Theory, InlineData(8), InlineData(12)]
    public void A_charge_melts_flat_in_about_an_hour(double kilograms)
    {
        var (pot, ledger) = (new Simulator.Plant.GlassPot(new(1), 2360), new Simulator.Plant.HeatLedger());
        pot.Fill(100, 1180);
        pot.Charge(kilograms, 0, 20, ledger);
        var minutes = 0.0;
        for (; !pot.Heap.IsEmpty; minutes += 2 / 60.0) pot.Step(2, 1200, ledger);
        Assert.InRange(minutes, 30, 90);
    }

    [Fact]
    public void The_shops_meter_sees_the_gas_of_both_burners()
    {
        var studio = Run.Studio(5);
        studio.Advance(Run.At(24));
        var plant = studio.Plant;
        var burnt = studio.Truth.FurnaceFuel.BaseCubicMetres + studio.Truth.GloryHoleFuel.BaseCubicMetres;
        Assert.Equal(plant.Metered(burnt), plant.MeteredCubicMetres, 1e-6);
    }
}
