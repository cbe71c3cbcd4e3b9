namespace HotShop.Simulator.Plant;

/// <summary>
/// The wall of a chamber as layers in a row, hot face first. Each layer has one temperature; heat crosses to the next and at last to
/// the room.
/// </summary>
internal sealed class Lining
{
    readonly double[] capacities, conductances, flows;

    /// <param name="capacitiesKilojoulesPerKelvin">Of each layer.</param>
    /// <param name="conductancesWattsPerKelvin">From each layer to the next; the last to the room.</param>
    public Lining(double[] capacitiesKilojoulesPerKelvin, double[] conductancesWattsPerKelvin)
    {
        capacities = capacitiesKilojoulesPerKelvin;
        conductances = [.. conductancesWattsPerKelvin.Select(w => w / 1000)];
        LayerCelsius = new double[capacities.Length];
        flows = new double[capacities.Length];
    }

    public double[] LayerCelsius { get; }

    public double HotFaceCelsius => LayerCelsius[0];

    public double StoredKilojoules => capacities.Zip(LayerCelsius, (c, t) => c * t).Sum();

    /// <summary>Sets the layers as after days at one temperature.</summary>
    public void SettleAt(double hotFaceCelsius, double roomCelsius)
    {
        var resistance = conductances.Sum(g => 1 / g);
        var flow = (hotFaceCelsius - roomCelsius) / resistance;
        LayerCelsius[0] = hotFaceCelsius;
        for (var i = 1; i < LayerCelsius.Length; i++) LayerCelsius[i] = LayerCelsius[i - 1] - flow / conductances[i - 1];
    }

    public void AddToHotFace(double kilojoules) => LayerCelsius[0] += kilojoules / capacities[0];

    /// <summary>Lets heat flow for a step.</summary>
    /// <returns>Lost to the room, in kJ.</returns>
    public double Conduct(double seconds, double roomCelsius)
    {
        var last = LayerCelsius.Length - 1;
        for (var i = 0; i <= last; i++)
            flows[i] = conductances[i] * (LayerCelsius[i] - (i == last ? roomCelsius : LayerCelsius[i + 1])) * seconds;
        for (var i = 0; i <= last; i++)
            LayerCelsius[i] += ((i == 0 ? 0 : flows[i - 1]) - flows[i]) / capacities[i];
        return flows[last];
    }
}
