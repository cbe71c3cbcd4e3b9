namespace HotShop.Simulator.Plant;

/// <summary>The setpoint in force, led towards its target at a rate.</summary>
internal sealed class Setpoint(double celsius)
{
    double targetCelsius = celsius, kelvinPerHour = 60;

    public double Celsius { get; private set; } = celsius;

    public void LeadTo(double newTargetCelsius, double newKelvinPerHour) => (targetCelsius, kelvinPerHour) = (newTargetCelsius, newKelvinPerHour);

    public void JumpTo(double newCelsius) => Celsius = targetCelsius = newCelsius;

    public void Step(double seconds)
    {
        var most = kelvinPerHour * seconds / 3600;
        Celsius += Math.Clamp(targetCelsius - Celsius, -most, most);
    }
}
