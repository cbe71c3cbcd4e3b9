using HotShop.Simulator.Plant;

namespace HotShop.Simulator.Truth;

/// <summary>
/// The same furnace with the same losses and burner, held at the temperatures the crew holds it at (working, idle), which nobody charges,
/// gathers from, opens or heats further for the sake of a charge. What it burns is what holding cost; what the real one burnt more, melting
/// and working cost: heat into cold glass, open doors, the hotter hours of a cook.
/// </summary>
internal sealed class HoldingTwin
{
    readonly StudioPlant plant;
    readonly MeltingFurnace furnace;

    /// <param name="plant">Settled at its start.</param>
    /// <param name="heldCelsius">Setpoint at which it is held at that time, in °C.</param>
    public HoldingTwin(StudioPlant plant, double heldCelsius)
    {
        this.plant = plant;
        furnace = new MeltingFurnace(plant.Hidden, plant.Glass);
        furnace.SettleAt(heldCelsius, plant.RoomCelsius, plant.Furnace.Pot.MeltKilograms);
    }

    public double Kilowatthours => furnace.Ledger.FuelKilojoules / 3600;

    public void HoldAt(double celsius, double kelvinPerHour) => furnace.Setpoint.LeadTo(celsius, kelvinPerHour);

    /// <summary>Follows the plant by one step; faults spare it.</summary>
    public void Step() => furnace.Step(StudioPlant.StepSeconds, new Surroundings(plant.RoomCelsius, HasMains: true, HasGas: true), default);
}
