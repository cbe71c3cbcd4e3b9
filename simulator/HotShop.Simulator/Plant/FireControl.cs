namespace HotShop.Simulator.Plant;

/// <summary>
/// Proportional-integral control of heat between nothing and everything, the integral held while the output is at its end.
/// </summary>
internal sealed class FireControl(double bandKelvin, double integralSeconds)
{
    double integral;

    /// <summary>0 to 1 of the heat that can be controlled.</summary>
    public double Output { get; private set; }

    public void Settle(double output) => Output = integral = output;

    public double Step(double errorKelvin, double seconds)
    {
        var proportional = errorKelvin / bandKelvin;
        var wanted = proportional + integral;
        Output = Math.Clamp(wanted, 0, 1);
        if (wanted == Output || Math.Sign(proportional) != Math.Sign(wanted - Output))
            integral = Math.Clamp(integral + proportional * seconds / integralSeconds, 0, 1);
        return Output;
    }
}
