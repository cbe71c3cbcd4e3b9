using HotShop.Monitor.Fuel;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>A supplier's bill as it was typed.</summary>
/// <param name="Id">Made by whoever enters it: the same id is the same bill.</param>
/// <param name="Last">Included.</param>
/// <param name="Quantity">In <paramref name="Unit"/>; null in a bill that strikes another out.</param>
/// <param name="EnergyKilowattHours">Where the bill states it beside a volume.</param>
/// <param name="Amount">What it asks for, in the studio's currency, taxes included.</param>
/// <param name="Corrects">Id of the bill whose place it takes.</param>
public sealed record Bill(
    string Id, EnergyKind Kind, LocalDate First, LocalDate Last, decimal? Quantity, BilledUnit Unit, decimal? EnergyKilowattHours, decimal? Amount, string? Note, string? Who, string? Corrects);

/// <summary>A bill as text, from a form or a line of a file; nothing in it is checked.</summary>
public sealed record BillRow(
    string? Id, string? Energy, string? First, string? Last, string? Quantity, string? Unit, string? EnergyKwh, string? Amount, string? Note, string? Who, string? Corrects)
{
    /// <summary>Columns of a file, in the order of its first line.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["id", "energy", "first", "last", "quantity", "unit", "energyKwh", "amount", "note", "who", "corrects"];

    /// <summary>From the fields of a line.</summary>
    public static BillRow From(Func<string, string?> field) => new(
        field("id"), field("energy"), field("first"), field("last"), field("quantity"), field("unit"), field("energyKwh"), field("amount"), field("note"), field("who"), field("corrects"));
}
