namespace HotShop.Physics.FuelGases;

/// <summary>Atoms of each element in a molecule, or moles of them in a mole of a mixture. Inert stands for argon and helium.</summary>
public readonly record struct Atoms(double Carbon, double Hydrogen, double Oxygen, double Nitrogen, double Inert)
{
    public static Atoms operator +(Atoms a, Atoms b) =>
        new(a.Carbon + b.Carbon, a.Hydrogen + b.Hydrogen, a.Oxygen + b.Oxygen, a.Nitrogen + b.Nitrogen, a.Inert + b.Inert);

    public static Atoms operator *(double moles, Atoms a) =>
        new(moles * a.Carbon, moles * a.Hydrogen, moles * a.Oxygen, moles * a.Nitrogen, moles * a.Inert);

    public static Atoms Add(Atoms left, Atoms right) => left + right;

    public static Atoms Multiply(double left, Atoms right) => left * right;
}
